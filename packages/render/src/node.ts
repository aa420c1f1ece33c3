import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { FontFace } from './drawing/model.js';
import { createFontBook } from './text/font-book.js';
import type { FontBook } from './text/font-book.js';

const FILES: Readonly<Record<FontFace, string>> = {
  regular: 'DejaVuSans.ttf',
  bold: 'DejaVuSans-Bold.ttf',
  narrow: 'DejaVuSansCondensed.ttf',
  'narrow bold': 'DejaVuSansCondensed-Bold.ttf',
};

/** Loads the fonts that come with this package (DejaVu: Latin, Greek, Cyrillic and many more). */
export function loadFontBook(): FontBook {
  const require = createRequire(import.meta.url);
  const read = (face: FontFace): Uint8Array =>
    new Uint8Array(readFileSync(require.resolve(`dejavu-fonts-ttf/ttf/${FILES[face]}`)));
  return createFontBook({
    regular: read('regular'),
    bold: read('bold'),
    narrow: read('narrow'),
    'narrow bold': read('narrow bold'),
  });
}
