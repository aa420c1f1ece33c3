import type { Hide } from '../model/hide.js';
import { openFile } from './envelope.js';
import type { FileFormat } from './envelope.js';
import { judge, placeOf } from './explain.js';
import { group } from './schema/group.js';
import { HIDE_FIELDS } from './schema/hide-schema.js';
import { exactly } from './schema/leaves.js';
import { validateHide } from './validate-hide.js';
import type { TextTree } from './text/text-tree.js';
import { storedValue, writeStored } from './write-stored.js';
import { JSON_SYNTAX } from './text/json-text.js';

export const HIDE_FORMAT = 'hidebound/hide@1';

export const hideFileSchema = group({
  format: [exactly(HIDE_FORMAT), 'What this file is.'],
  ...HIDE_FIELDS,
});

const format: FileFormat<typeof hideFileSchema> = {
  kind: 'hide',
  syntax: JSON_SYNTAX,
  schema: hideFileSchema,
  upgrades: [],
};

/**
 * Reads a hide file (`*.hide.json`) and proves that it can be worked with: outline and openings run once around,
 * every mark lies on the hide. Coordinates are rounded to 0.001 mm on reading as on writing.
 * @throws LeatherError
 */
export function parseHide(text: string, options: { readonly file: string }): Hide {
  const opened = openFile(text, options.file, format);
  const { format: _, ...hide } = opened.value;
  validateHide(hide, (path) => placeOf(opened, path));
  return hide;
}

/**
 * The hide as its file would give it back, without writing and reading the text: for a hide that is being drawn on.
 * @throws LeatherError as `parseHide`, without lines
 */
export function provenHide(hide: Hide, options: { readonly file: string }): Hide {
  const value = storedValue(hideFileSchema, { format: HIDE_FORMAT, ...hide });
  const tree: TextTree = { value, lineOf: () => undefined };
  const { format: _, ...stored } = judge(options.file, tree, hideFileSchema);
  validateHide(stored, (path) => placeOf({ file: options.file, tree }, path));
  return stored;
}

/** The hide's file: stable key order, coordinates rounded to 0.001 mm; the same hide gives the same bytes. */
export function writeHide(hide: Hide): string {
  return writeStored(hideFileSchema, { format: HIDE_FORMAT, ...hide });
}
