import { extname } from 'node:path';
import type { Hide, PatternPiece, Workshop } from '@hidebound/leather';
import type { Drawing, FontBook, PieceStitches } from '@hidebound/render';
import { CliError } from './cli-error.js';
import type { FileToWrite } from './io/write-safely.js';

/** What can be drawn into a picture file. */
export type PictureOf =
  | { readonly pieces: readonly PatternPiece[]; readonly stitches?: readonly PieceStitches[] }
  | { readonly hide: Hide; readonly workshop?: Workshop };

/** A drawing as the file that its name asks for: .svg or .pdf. */
export async function pictureFile(path: string, of: PictureOf): Promise<FileToWrite> {
  const extension = extname(path).toLowerCase();
  if (extension !== '.svg' && extension !== '.pdf') {
    throw new CliError('bad-use', `The picture ${path} must be named .svg or .pdf.`);
  }
  const { drawHide, drawPieces, writePdf, writeSvg } = await import('@hidebound/render');
  const { loadFontBook } = await import('@hidebound/render/node');
  const fonts: FontBook = loadFontBook();
  const title = 'hide' in of ? `Hide ${of.hide.id}` : 'Pieces';
  const drawing: Drawing = 'hide' in of ? drawHide({ ...of, fonts }) : drawPieces({ ...of, fonts, title });
  return {
    path,
    content: extension === '.svg' ? writeSvg(drawing) : await writePdf([drawing], { fonts, title }),
  };
}
