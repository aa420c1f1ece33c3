import type { Stroke } from '../drawing/model.js';
import { BRASS, CUT_LINE_MM, FINE_LINE_MM, INDIGO, INK, INK_SOFT, OXBLOOD } from '../sheet/palette.js';

/** How each line of a pattern is drawn: by colour, and by dashes for those who see no colours. */
export const LINE_LOOKS = {
  cut: { name: 'cut line', stroke: { colour: INK, widthMm: CUT_LINE_MM } },
  hole: { name: 'cut-out, punch, notch', stroke: { colour: OXBLOOD, widthMm: FINE_LINE_MM * 1.4 } },
  stitch: {
    name: 'stitch line',
    stroke: { colour: INDIGO, widthMm: FINE_LINE_MM * 1.4, dashMm: [2.4, 1.4] },
  },
  fold: {
    name: 'fold line',
    stroke: { colour: BRASS, widthMm: FINE_LINE_MM * 1.4, dashMm: [7, 1.6, 1.2, 1.6] },
  },
  skive: { name: 'skive line', stroke: { colour: INK_SOFT, widthMm: FINE_LINE_MM, dashMm: [0.9, 0.9] } },
  cement: {
    name: 'cement line',
    stroke: { colour: INK_SOFT, widthMm: FINE_LINE_MM, dashMm: [4, 1, 0.8, 1, 0.8, 1] },
  },
  face: {
    name: 'bounds what is seen',
    stroke: { colour: INK_SOFT, widthMm: FINE_LINE_MM * 1.6, dashMm: [0.4, 0.8] },
  },
} as const satisfies Record<string, { readonly name: string; readonly stroke: Stroke }>;

export type LineKind = keyof typeof LINE_LOOKS;
