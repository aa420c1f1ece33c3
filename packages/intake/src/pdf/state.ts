import { composeAffine } from '@hidebound/geometry';
import type { Affine } from '@hidebound/geometry';
import type { Clip } from './clip-shape.js';

/** The parts of the graphics state that matter to lines and texts (ISO 32000-1, sections 8.4 and 9.3). */
export interface GraphicsState {
  /** User space → page frame, mm. */
  readonly toMm: Affine;
  readonly clip: Clip;
  /** User space units. */
  readonly lineWidth: number;
  readonly isDashed: boolean;
  /** `#rrggbb`, or `other` for a pattern; nothing for one that can't be seen. */
  readonly stroke: string | undefined;
  readonly fill: string | undefined;
  readonly strokeAlpha: number;
  readonly fillAlpha: number;
  readonly text: TextState;
}

export interface TextState {
  readonly font: string;
  readonly size: number;
  readonly charSpacing: number;
  readonly wordSpacing: number;
  /** 1 is as the font is made. */
  readonly horizontalScale: number;
  readonly leading: number;
  readonly rise: number;
  readonly renderingMode: number;
}

export function initialState(toMm: Affine, clip: Clip): GraphicsState {
  return {
    toMm,
    clip,
    lineWidth: 1,
    isDashed: false,
    stroke: '#000000',
    fill: '#000000',
    strokeAlpha: 1,
    fillAlpha: 1,
    text: {
      font: '',
      size: 0,
      charSpacing: 0,
      wordSpacing: 0,
      horizontalScale: 1,
      leading: 0,
      rise: 0,
      renderingMode: 0,
    },
  };
}

/** `cm`: the new transform acts before those that stand. Six numbers in PDF's order, which is SVG's too. */
export function transformed(state: GraphicsState, numbers: ArrayLike<number>): GraphicsState {
  return { ...state, toMm: composeAffine(state.toMm, affineOf(numbers)) };
}

export function affineOf(n: ArrayLike<number>): Affine {
  return { a: n[0]!, b: n[1]!, c: n[2]!, d: n[3]!, e: n[4]!, f: n[5]! };
}

/** A dash pattern with gaps; one without draws a solid line. */
export function hasGaps(dashes: unknown): boolean {
  if (!Array.isArray(dashes) || dashes.length === 0) return false;
  const gaps = dashes.length === 1 ? dashes : dashes.filter((_, i) => i % 2 === 1 || dashes.length % 2 === 1);
  return gaps.some((gap) => typeof gap === 'number' && gap > 0);
}

/** What an entry of an extended graphics state changes (ISO 32000-1, table 58); pdf.js gives pairs of name and value. */
export function withExtended(state: GraphicsState, name: string, value: unknown): GraphicsState {
  switch (name) {
    case 'LW':
      return typeof value === 'number' ? { ...state, lineWidth: Math.abs(value) } : state;
    case 'D':
      return Array.isArray(value) ? { ...state, isDashed: hasGaps(value[0]) } : state;
    case 'CA':
      return typeof value === 'number' ? { ...state, strokeAlpha: value } : state;
    case 'ca':
      return typeof value === 'number' ? { ...state, fillAlpha: value } : state;
    case 'Font':
      return Array.isArray(value)
        ? { ...state, text: { ...state.text, font: String(value[0]), size: Number(value[1]) } }
        : state;
    default:
      return state;
  }
}
