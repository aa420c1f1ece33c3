import { path, regionCurves } from '../drawing/build.js';
import type { DrawingElement } from '../drawing/model.js';
import { hatchLines } from '../drawing/hatch.js';
import { FINE_LINE_MM, HAIRLINE_MM, INK_SOFT, PAPER } from '../sheet/palette.js';
import type { PictureStyle } from './picture-style.js';
import type { PlacedPiece } from './placed-pieces.js';

/** Crossed lines over a spoiled piece's place: neither leather nor good. */
const HATCH_SPACING_MM = 2.2;
const HATCH_DEG = [45, 135] as const;

/** Where pieces were cut the paper shows; where one was spoiled it is crossed out. */
export function gonePieces(gone: readonly PlacedPiece[], style: PictureStyle): DrawingElement[] {
  const stroke = { colour: INK_SOFT, widthMm: FINE_LINE_MM * style.pen };
  return gone.flatMap(({ region, placement }) => [
    path(regionCurves(region), { fill: PAPER, stroke }),
    ...(placement.state === 'spoiled' ? spoiledCross(region, style) : []),
  ]);
}

/** The crossed lines alone. */
export function spoiledCross(region: PlacedPiece['region'], style: PictureStyle): DrawingElement[] {
  const stroke = { colour: INK_SOFT, widthMm: HAIRLINE_MM * style.pen };
  return HATCH_DEG.map((angleDeg) =>
    path(hatchLines([region], { spacingMm: HATCH_SPACING_MM * style.grow, angleDeg }), { stroke }),
  );
}
