import {
  boxesTouch,
  curveFromPolyline,
  offsetRegions,
  orientRing,
  regionArea,
  regionBox,
  regionDistance,
  ringBox,
  subtractRegions,
  transformRegion,
  transformRing,
} from '@hidebound/geometry';
import type { Curve, Region, Ring } from '@hidebound/geometry';
import type { RoughCutBlock } from '../model/layout.js';
import { pieceCopyKey } from '../order/item-id.js';
import { closedContour, frameOfSide } from './gather.js';
import type { PieceToCut, WorkOfHide } from './gather.js';
import { SAME_LINE_MM } from './contour.js';
import type { Contour } from './contour.js';
import type { CutFileOptions } from './types.js';

/**
 * The lines of rough cuts. They are not moved by half the kerf, since the margin around their pieces can spare it; but a
 * block may touch a piece that is not its own, and there its line is drawn back by the kerf so that the cut spares that
 * piece.
 */
export function roughCutContours(
  { roughCuts, pieces }: WorkOfHide,
  { kerfMm, side }: CutFileOptions,
): Contour[] {
  return roughCuts.map((block) => {
    const outline = transformRing(frameOfSide(side), block.outline);
    const foreign = kerfMm === 0 ? [] : foreignPieces(block, outline, pieces, kerfMm);
    return closedContour(
      'rough cut',
      { kind: 'rough cut', id: block.id },
      'outside',
      ringCurve(drawnBack(outline, foreign, kerfMm)),
    );
  });
}

/** Test pieces, as outlines. */
export function swatchContours({ swatches }: WorkOfHide, { side }: CutFileOptions): Contour[] {
  const toFile = frameOfSide(side);
  return swatches.map(({ id, outline }) =>
    closedContour('cut', { kind: 'swatch', id }, 'outside', ringCurve(transformRing(toFile, outline))),
  );
}

function ringCurve(ring: Ring): Curve {
  return curveFromPolyline(ring, true);
}

/** Pieces outside the block that its cut would take leather from. */
function foreignPieces(
  block: RoughCutBlock,
  outline: Ring,
  pieces: readonly PieceToCut[],
  kerfMm: number,
): Region[] {
  const own = new Set(block.members.map(pieceCopyKey));
  const whole: Region = { outer: orientRing(outline, 'outer'), openings: [] };
  return pieces
    .filter(({ placement }) => !own.has(pieceCopyKey(placement)))
    .map(({ piece, place }) => transformRegion(place, piece.region))
    .filter((region) => boxesTouch(regionBox(region), ringBox(outline), kerfMm))
    .filter((region) => regionDistance(region, whole) < kerfMm - SAME_LINE_MM);
}

function drawnBack(outline: Ring, foreign: readonly Region[], kerfMm: number): Ring {
  if (foreign.length === 0) return outline;
  const kept = offsetRegions(foreign, kerfMm, { join: 'mitre' });
  const rest = subtractRegions([{ outer: orientRing(outline, 'outer'), openings: [] }], kept);
  const [largest] = [...rest].sort((a, b) => regionArea(b) - regionArea(a));
  return largest?.outer ?? outline;
}
