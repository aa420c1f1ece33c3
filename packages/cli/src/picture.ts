import { extname } from 'node:path';
import { writePdf, writeSvg } from '@hidebound/render';
import type { Drawing, FontBook } from '@hidebound/render';
import { loadFontBook } from '@hidebound/render/node';
import { CliError } from './cli-error.js';
import type { FileToWrite } from './io/write-safely.js';

/** A drawing as the file that its name asks for: .svg or .pdf. */
export async function pictureFile(
  path: string,
  title: string,
  draw: (fonts: FontBook) => Drawing,
): Promise<FileToWrite> {
  const extension = extname(path).toLowerCase();
  if (extension !== '.svg' && extension !== '.pdf') {
    throw new CliError('bad-use', `The picture ${path} must be named .svg or .pdf.`);
  }
  const fonts = loadFontBook();
  const drawing = draw(fonts);
  return {
    path,
    content: extension === '.svg' ? writeSvg(drawing) : await writePdf([drawing], { fonts, title }),
  };
}
