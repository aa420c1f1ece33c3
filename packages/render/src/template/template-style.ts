import type { Stroke } from '../drawing/model.js';

/** Templates are printed black and white: no greys, which printers break up into dots. */
export const BLACK = '#000000';
export const WHITE = '#ffffff';

/** Letters, mm of em (capitals are 0.73 of it). Names are read across a table, the rest in the hand. */
export const NAME_TEXT_MM = 6.5;
export const FACT_TEXT_MM = 3.6;
export const BAND_TEXT_MM = 2.9;

/** What a line on a template is: told apart by width and dashes alone. */
const LINES = {
  cut: { name: 'cut', widthMm: 0.35 },
  hole: { name: 'punch, notch', widthMm: 0.25 },
  'stitch hole': { name: 'stitch hole', widthMm: 0.2 },
  stitch: { name: 'stitch', widthMm: 0.25, dashMm: [3, 1.8] },
  fold: { name: 'fold', widthMm: 0.25, dashMm: [9, 2, 1.5, 2] },
  skive: { name: 'skive', widthMm: 0.2, dashMm: [1, 1] },
  cement: { name: 'cement', widthMm: 0.2, dashMm: [5, 1.5, 1, 1.5, 1, 1.5] },
  face: { name: 'edge of face', widthMm: 0.3, dashMm: [0.5, 1.4] },
  allowance: { name: 'allowance', widthMm: 0.3, dashMm: [0.5, 1.4] },
  'card point': { name: 'A, B: laid on chalk marks', widthMm: 0.35 },
  'hide edge': { name: 'hide edge', widthMm: 0.7 },
  backbone: { name: 'backbone', widthMm: 0.25, dashMm: [14, 3, 2, 3] },
  flaw: { name: 'flaw', widthMm: 0.2, dashMm: [1.6, 0.8] },
  'flaw never': { name: 'never here', widthMm: 0.25 },
  lane: { name: 'first cut', widthMm: 0.6 },
  'rough cut': { name: 'rough cut', widthMm: 0.5, dashMm: [12, 3] },
  'freeing cut': { name: 'freeing cut', widthMm: 0.6, dashMm: [14, 3, 3, 3] },
  piece: { name: 'piece', widthMm: 0.15, dashMm: [2, 2] },
} as const satisfies Record<
  string,
  { readonly name: string; readonly widthMm: number; readonly dashMm?: readonly number[] }
>;

export type TemplateLine = keyof typeof LINES;

export const TEMPLATE_LINES = Object.keys(LINES) as readonly TemplateLine[];

export function lineName(kind: TemplateLine): string {
  return LINES[kind].name;
}

export function lineStroke(kind: TemplateLine): Stroke {
  const line: { readonly widthMm: number; readonly dashMm?: readonly number[] } = LINES[kind];
  return {
    colour: BLACK,
    widthMm: line.widthMm,
    ...(line.dashMm === undefined ? {} : { dashMm: line.dashMm }),
  };
}
