import { create } from 'fontkit';
import type { Font } from 'fontkit';
import type { FontFace } from '../drawing/model.js';
import { RenderError } from '../error.js';

/** The bytes of one TrueType file for each face. */
export type FontFiles = Readonly<Record<FontFace, Uint8Array>>;

/** The fonts that a drawing is measured and written with. Made once by `createFontBook`. */
export interface FontBook {
  readonly files: FontFiles;
  readonly fonts: Readonly<Record<FontFace, Font>>;
  /** Words that were measured before, by face and word: laying out a word is slow, and sheets repeat them. */
  readonly measured: Map<string, WordMeasure>;
}

/** Extent of a word in font units. */
export interface WordMeasure {
  readonly width: number;
  readonly above: number;
  readonly below: number;
}

/** Opens the font files. Throws `bad-font` if one can't be read. */
export function createFontBook(files: FontFiles): FontBook {
  return { files, fonts: openFonts(files), measured: new Map() };
}

/** Opens each file anew: a font that was used before remembers glyphs, and a file written with it would show that. */
export function openFonts(files: FontFiles): Readonly<Record<FontFace, Font>> {
  return {
    regular: openFont('regular', files.regular),
    bold: openFont('bold', files.bold),
    narrow: openFont('narrow', files.narrow),
    'narrow bold': openFont('narrow bold', files['narrow bold']),
  };
}

function openFont(face: FontFace, bytes: Uint8Array): Font {
  try {
    return create(bytes);
  } catch {
    throw new RenderError(
      'bad-font',
      `The file given for the ${face} font can't be read as a TrueType font.`,
    );
  }
}
