import { mkdirSync } from 'node:fs';
import { dirname, isAbsolute, join, relative, sep } from 'node:path';
import {
  checkLayout,
  preparedRoughCuts,
  withSwatches,
  writeHide,
  writeLayout,
  writeOrder,
} from '@hidebound/leather';
import type { Layout, NamedHide, PreparePlan } from '@hidebound/leather';
import { writePatternSvg } from '@hidebound/render';
import { CliError } from '../cli-error.js';
import { besideFile } from '../io/load-files.js';
import { writeFailureWords } from '../io/system-words.js';
import type { FileToWrite } from '../io/write-safely.js';

/** The layout once more, with the plan’s test pieces. They are proven before anything is written. */
export function layoutWithSwatches(
  layout: Layout,
  named: readonly NamedHide[],
  plan: PreparePlan,
  path: string,
  out: string,
): FileToWrite {
  const more = withSwatches(layout, plan.swatches.swatches);
  const { violations } = checkLayout(more, named);
  const ids = more.swatches.map(({ id }) => id);
  const broken = violations.find(({ other }) => typeof other === 'string' && ids.includes(other));
  if (broken !== undefined) throw new Error(`A test piece breaks the rule "${broken.rule}".`);
  return { path: out, content: writeLayout(movedTo(more, path, out)) };
}

/** Hides are named from the layout's own folder. */
function movedTo(layout: Layout, from: string, to: string): Layout {
  const name = (file: string): string =>
    isAbsolute(file) ? file : relative(dirname(to), besideFile(from, file)).split(sep).join('/');
  return {
    ...layout,
    order: {
      ...layout.order,
      leathers: layout.order.leathers.map((leather) => ({ ...leather, hides: leather.hides.map(name) })),
    },
    hides: layout.hides.map((hide) => ({ ...hide, file: name(hide.file) })),
  };
}

/** Four files for each rough cut: the prepared hide, its pieces, the order that lays them on it, and how they lay before. */
export function preparedFiles(layout: Layout, named: readonly NamedHide[], folder: string): FileToWrite[] {
  const blocks = preparedRoughCuts(layout, named);
  if (blocks.length > 0) makeFolder(folder);
  return blocks.flatMap(({ fileName, hide, order, pieces, layout: own }) => [
    { path: join(folder, `${fileName}.hide.json`), content: writeHide(hide) },
    { path: join(folder, `${fileName}.svg`), content: writePatternSvg(pieces, { title: order.name }) },
    { path: join(folder, `${fileName}.order.yaml`), content: writeOrder(order) },
    { path: join(folder, `${fileName}.layout.json`), content: writeLayout(own) },
  ]);
}

function makeFolder(folder: string): void {
  try {
    mkdirSync(folder, { recursive: true });
  } catch (error) {
    throw new CliError('can-not-write', `This folder can't be made: ${writeFailureWords(error)}.`, {
      file: folder,
    });
  }
}
