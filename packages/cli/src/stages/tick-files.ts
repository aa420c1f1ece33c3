import { existsSync, mkdirSync, readFileSync, readdirSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { writeHide, writeLayout } from '@hidebound/leather';
import type { CuttingStage, Hide, Layout, NamedHide } from '@hidebound/leather';
import { CliError } from '../cli-error.js';
import { besideFile } from '../io/load-files.js';
import { pathFrom } from '../io/path-from.js';
import { writeFailureWords } from '../io/system-words.js';
import type { FileToWrite } from '../io/write-safely.js';

/** A layout names its hides as seen from its own folder. */
export function layoutFor(layout: Layout, from: string, to: string): Layout {
  if (resolve(dirname(from)) === resolve(dirname(to))) return layout;
  const moved = (file: string): string => pathFrom(dirname(to), resolve(besideFile(from, file)));
  return {
    ...layout,
    hides: layout.hides.map((hide) => ({ ...hide, file: moved(hide.file) })),
    order: {
      ...layout.order,
      leathers: layout.order.leathers.map((leather) => ({ ...leather, hides: leather.hides.map(moved) })),
    },
  };
}

/** The layout, and before it what it replaces, under the name that says so. */
export function layoutFiles(layout: Layout, path: string, outPath: string): FileToWrite[] {
  return [...beforeOf(outPath), { path: outPath, content: writeLayout(layoutFor(layout, path, outPath)) }];
}

/** The hides of which flaws were found, likewise. */
export function hideFiles(hides: readonly NamedHide[], layoutPath: string): FileToWrite[] {
  return hides.flatMap(({ file, hide }) => {
    const path = besideFile(layoutPath, file);
    return [...beforeOf(path), { path, content: writeHide(hide) }];
  });
}

function beforeOf(path: string): FileToWrite[] {
  return existsSync(path) ? [{ path: `${path}.before`, content: readFileSync(path) }] : [];
}

export interface RestFiles {
  readonly files: readonly FileToWrite[];
  /** Hide files of an earlier time that tell of parts which are no longer there. */
  readonly stale: readonly string[];
}

/** What is left of each hide that something was cut from, a file for each part. */
export function restFiles(stage: CuttingStage, folder: string): RestFiles {
  const begun = stage.hides.filter(({ cut, spoiled }) => cut + spoiled > 0);
  const parts: Hide[] = begun.flatMap((hide) => hide.parts);
  const names = parts.map(({ id }) => restName(id));
  const stale = namesIn(folder).filter(
    (name) => begun.some(({ hide }) => isRestOf(name, hide)) && !names.includes(name),
  );
  return {
    files: parts.map((part, i) => ({ path: join(folder, names[i]!), content: writeHide(part) })),
    stale: stale.map((name) => join(folder, name)),
  };
}

/** Characters that some file system does not take. */
const UNFIT = /[\\/:*?"<>|]/g;

function restName(id: string): string {
  return `${id.replace(UNFIT, '_')}.hide.json`;
}

function isRestOf(name: string, hide: string): boolean {
  const start = `${hide.replace(UNFIT, '_')}-rest`;
  return name.startsWith(start) && /^(-\d+)?\.hide\.json$/.test(name.slice(start.length));
}

function namesIn(folder: string): string[] {
  return existsSync(folder) ? readdirSync(folder) : [];
}

/** Makes the folder where it is missing. Fails with a CliError `can-not-write`. */
export function ensureFolder(folder: string): void {
  try {
    mkdirSync(folder, { recursive: true });
  } catch (error) {
    throw new CliError('can-not-write', `The folder could not be made: ${writeFailureWords(error)}.`, {
      file: folder,
    });
  }
}
