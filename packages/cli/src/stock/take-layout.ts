import { readdirSync } from 'node:fs';
import { join, relative, resolve, sep } from 'node:path';
import { parseLayout, planTake, planUndo, sha256Hex } from '@hidebound/leather';
import type { Diagnostic, TakePlan, UndoPlan, Workshop } from '@hidebound/leather';
import { readText } from '../io/load-files.js';
import { changeStock } from './change-stock.js';
import { keptText } from './stock-files.js';
import type { LockOptions } from './stock-lock.js';

export interface TakeOptions extends LockOptions {
  readonly workshop: Workshop;
  /** ISO 8601 day. */
  readonly date: string;
  readonly place?: string | undefined;
}

/** Turns the hides of a layout into their offcuts, in one step. */
export async function takeLayout(
  folder: string,
  layoutPath: string,
  { workshop, date, place, ...lock }: TakeOptions,
): Promise<{ readonly plan: TakePlan; readonly diagnostics: readonly Diagnostic[] }> {
  const text = readText(layoutPath, 'layout');
  const layout = parseLayout(text, { file: layoutPath });
  const { step, diagnostics } = await changeStock(
    folder,
    ({ files, journal }) =>
      planTake({
        hides: files,
        fileNames: readdirSync(folder),
        journal,
        layout,
        layoutFile: relative(resolve(folder), resolve(layoutPath)).split(sep).join('/'),
        layoutHash: sha256Hex(text),
        date,
        workshop,
        place,
      }),
    lock,
  );
  return { plan: step, diagnostics: [...diagnostics, ...step.diagnostics] };
}

/** Undoes a step; absent: the last one. */
export async function undoStep(
  folder: string,
  { date, step, ...lock }: LockOptions & { readonly date: string; readonly step?: number | undefined },
): Promise<{ readonly plan: UndoPlan; readonly diagnostics: readonly Diagnostic[] }> {
  const changed = await changeStock(
    folder,
    ({ files, journal }) =>
      planUndo({
        hides: files,
        journal,
        step,
        date,
        kept: (hash, file, number) => keptText(folder, hash, file, number),
      }),
    lock,
  );
  return { plan: changed.step, diagnostics: changed.diagnostics };
}

/** The names of offcuts with their files, for a person. */
export function filedWords(
  folder: string,
  files: readonly { readonly file: string; readonly id: string }[],
): string[] {
  return files.map(({ file, id }) => `  ${id} in ${join(folder, file)}`);
}
