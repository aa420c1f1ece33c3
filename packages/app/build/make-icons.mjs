// Draws the app's icons from icon.svg: node packages/app/build/make-icons.mjs. What matters lies within the middle
// four fifths, which every mask keeps (W3C, Web Application Manifest, maskable icons).
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Resvg } from '@resvg/resvg-js';

const folder = join(import.meta.dirname, '../public');
const drawing = readFileSync(join(folder, 'icon.svg'), 'utf8');
for (const width of [192, 512]) {
  const picture = new Resvg(drawing, { fitTo: { mode: 'width', value: width } }).render();
  writeFileSync(join(folder, `icon-${width}.png`), picture.asPng());
}
