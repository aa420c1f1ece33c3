import { applyAffine, composeAffine, IDENTITY, translation } from '@hidebound/geometry';
import type { Affine, Point } from '@hidebound/geometry';
import type { GraphicsState } from './state.js';

/** Letters shown by one operator, in the page's frame, mm. */
export interface TextRun {
  readonly text: string;
  readonly at: Point;
  readonly end: Point;
  readonly sizeMm: number;
}

/** Where the next letter goes: text space → user space, for the letters and for the start of their line. */
export interface TextMatrices {
  readonly letters: Affine;
  readonly line: Affine;
}

export const TEXT_START: TextMatrices = { letters: IDENTITY, line: IDENTITY };

/** To the start of another line, from that of this one (ISO 32000-1, table 108). */
export function nextTextLine({ line }: TextMatrices, x: number, y: number): TextMatrices {
  const moved = composeAffine(line, translation(x, y));
  return { letters: moved, line: moved };
}

/** A letter as pdf.js hands it on, or a step back in thousandths of the size. */
export type Glyph =
  { readonly unicode?: string; readonly width?: number; readonly isSpace?: boolean } | number | null;

/** Widths are in thousandths of the size, as in every font but those of type 3. */
const GLYPH_UNITS = 1000;

/** Letters that fonts draw as one, "fl" and the like (Unicode, alphabetic presentation forms): no name is written with them. */
const LIGATURES = /[\uFB00-\uFB06]/g;

/** A step as wide as this share of the size, between letters that hold no space, stands for one. */
const STEP_IS_SPACE = 0.2;

/** The run that an operator shows, and where the letters after it go (ISO 32000-1, section 9.4.4). */
export function showText(
  glyphs: readonly Glyph[],
  matrices: TextMatrices,
  { text: state, toMm }: GraphicsState,
): { readonly run: TextRun | undefined; readonly matrices: TextMatrices } {
  let text = '';
  let x = 0;
  for (const glyph of glyphs) {
    if (glyph === null) continue;
    if (typeof glyph === 'number') {
      const step = -glyph / GLYPH_UNITS;
      if (step > STEP_IS_SPACE && text !== '' && !text.endsWith(' ')) text += ' ';
      x += step * state.size * state.horizontalScale;
      continue;
    }
    text += (glyph.unicode ?? '').replace(LIGATURES, (letters) => letters.normalize('NFKC'));
    const spacing = state.charSpacing + (glyph.isSpace === true ? state.wordSpacing : 0);
    x += (((glyph.width ?? 0) / GLYPH_UNITS) * state.size + spacing) * state.horizontalScale;
  }
  const toPage = composeAffine(toMm, matrices.letters);
  const at = applyAffine(toPage, { x: 0, y: state.rise });
  const end = applyAffine(toPage, { x, y: state.rise });
  const up = Math.hypot(toPage.c, toPage.d) * Math.abs(state.size);
  const moved = { ...matrices, letters: composeAffine(matrices.letters, translation(x, 0)) };
  return {
    run: text.trim() === '' ? spaceOf(text, at, end, up) : { text, at, end, sizeMm: up },
    matrices: moved,
  };
}

/** Spaces alone are kept: they part the words of a line that is shown in pieces. */
function spaceOf(text: string, at: Point, end: Point, sizeMm: number): TextRun | undefined {
  return text === '' ? undefined : { text: ' ', at, end, sizeMm };
}
