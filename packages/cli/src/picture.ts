import { basename, extname } from 'node:path';
import type { Hide, PatternPiece, Workshop } from '@hidebound/leather';
import type { Drawing, FontBook, HidePictures, PatternPagePicture, PieceStitches } from '@hidebound/render';
import { CliError } from './cli-error.js';
import type { FileToWrite } from './io/write-safely.js';

/** What can be drawn into a picture file. */
export type PictureOf =
  | {
      readonly pieces: readonly PatternPiece[];
      readonly stitches?: readonly PieceStitches[];
      /** Files of several pages: how they lie is drawn before the pieces. */
      readonly tiled?: readonly TiledFile[];
    }
  | { readonly hide: Hide; readonly workshop?: Workshop; readonly pictures?: HidePictures };

export interface TiledFile {
  readonly file: string;
  readonly pages: readonly PatternPagePicture[];
}

/** A drawing as the file that its name asks for: .svg or .pdf. */
export async function pictureFile(path: string, of: PictureOf): Promise<FileToWrite> {
  const extension = extname(path).toLowerCase();
  if (extension !== '.svg' && extension !== '.pdf') {
    throw new CliError('bad-use', `The picture ${path} must be named .svg or .pdf.`);
  }
  const { drawHide, drawPages, drawPieces, writePdf, writeSvg } = await import('@hidebound/render');
  const { loadFontBook } = await import('@hidebound/render/node');
  const fonts: FontBook = loadFontBook();
  const title = 'hide' in of ? `Hide ${of.hide.id}` : 'Pieces';
  const drawing: Drawing = 'hide' in of ? drawHide({ ...of, fonts }) : drawPieces({ ...of, fonts, title });
  const tiled = 'hide' in of ? [] : (of.tiled ?? []);
  const pages = tiled.map((each) => drawPages({ pages: each.pages, fonts, title: basename(each.file) }));
  return {
    path,
    content:
      extension === '.svg'
        ? writeSvg(await oneAbove(pages, drawing))
        : await writePdf([...pages, drawing], { fonts, title }),
  };
}

/** Pages above the pieces, as broad as they are. */
async function oneAbove(pages: readonly Drawing[], drawing: Drawing): Promise<Drawing> {
  if (pages.length === 0) return drawing;
  const { stackDrawings } = await import('@hidebound/render');
  return stackDrawings([
    ...pages.map((page) => ({ drawing: page, grow: Math.max(1, drawing.widthMm / page.widthMm) })),
    { drawing, grow: 1 },
  ]);
}
