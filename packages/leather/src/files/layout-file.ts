import type { Layout } from '../model/layout.js';
import { openFile } from './envelope.js';
import type { FileFormat } from './envelope.js';
import { placeOf } from './explain.js';
import { group } from './schema/group.js';
import { LAYOUT_FIELDS } from './schema/layout-schema.js';
import { exactly } from './schema/leaves.js';
import { validateLayout } from './validate-layout.js';
import { writeStored } from './write-stored.js';
import { JSON_SYNTAX } from './text/json-text.js';

export const LAYOUT_FORMAT = 'hidebound/layout@1';

export const layoutFileSchema = group({
  format: [exactly(LAYOUT_FORMAT), 'What this file is.'],
  ...LAYOUT_FIELDS,
});

const format: FileFormat<typeof layoutFileSchema> = {
  kind: 'layout',
  syntax: JSON_SYNTAX,
  schema: layoutFileSchema,
  upgrades: [],
};

/**
 * Reads a layout file (`*.layout.json`) and proves that it hangs together: everything that it names is in it, and
 * nothing stands twice. Whether the pieces lie well is for the check to say.
 * @throws LeatherError
 */
export function parseLayout(text: string, options: { readonly file: string }): Layout {
  const opened = openFile(text, options.file, format);
  const { format: _, ...layout } = opened.value;
  validateLayout(layout, (path) => placeOf(opened, path));
  return layout;
}

/** The layout's file: stable key order, places rounded to 0.001 mm and angles to six decimals. */
export function writeLayout(layout: Layout): string {
  return writeStored(layoutFileSchema, { format: LAYOUT_FORMAT, ...layout });
}
