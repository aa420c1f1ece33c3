import { readdirSync, readFileSync } from 'node:fs';
import { join, sep } from 'node:path';
import {
  parseArticle,
  parseHide,
  parseLayout,
  parseOrder,
  parsePhotoHints,
  parseWorkshop,
} from '@hidebound/leather';

const READERS: readonly (readonly [RegExp, (text: string, options: { readonly file: string }) => unknown])[] =
  [
    [/\.hide\.json$/, parseHide],
    [/\.layout\.json$/, parseLayout],
    [/\.order\.yaml$/, parseOrder],
    [/\.article\.yaml$/, parseArticle],
    [/\.hints\.yaml$/, parsePhotoHints],
    [/^workshop\.yaml$/, parseWorkshop],
  ];

/** Paths of the files that a person sees in a folder, sorted; what the table keeps for itself is left out. */
export function filesIn(folder: string): readonly string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name).slice(folder.length + 1))
    .filter((path) => !path.startsWith('.'))
    .map((path) => path.split(sep).join('/'))
    .sort();
}

/** Reads every file of a job as the commands do. @throws the reader's own error for one that can't be read */
export function parseFolder(folder: string): void {
  for (const path of filesIn(folder)) {
    const [, read] = READERS.find(([pattern]) => pattern.test(path)) ?? [];
    read?.(readFileSync(join(folder, path), 'utf8'), { file: path });
  }
}
