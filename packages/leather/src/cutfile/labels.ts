import {
  circleCurve,
  containingRing,
  flattenCurve,
  orientRing,
  regionArea,
  subtractRegions,
  transformRegion,
} from '@hidebound/geometry';
import type { Region } from '@hidebound/geometry';
import { bufferedLine } from '../hide/flaw-region.js';
import { bareCopy } from '../order/item-id.js';
import type { LayablePiece } from '../model/piece.js';
import { arrowDegOf } from './gather.js';
import type { PieceToCut } from './gather.js';
import type { CutFileOptions, CutLabel } from './types.js';

/** Letters keep half of this from a line that is marked on the piece, mm. */
const MARK_WIDTH_MM = 2;
/** A marked line as corners; letters need no better. */
const MARK_TOLERANCE_MM = 0.2;

/** Where pieces may be named: of each its leather without holes and marked lines, the largest part of it. */
export function labelsOf(pieces: readonly PieceToCut[], side: CutFileOptions['side']): CutLabel[] {
  const known = new Map<LayablePiece, Region>();
  return pieces.map((one) => {
    const free = known.get(one.piece) ?? freeLeather(one.piece);
    known.set(one.piece, free);
    return {
      copy: bareCopy(one.placement),
      region: transformRegion(one.place, free),
      arrowDeg: arrowDegOf(one, side),
    };
  });
}

function freeLeather({ shape, region }: LayablePiece): Region {
  const holes = shape.punches.map(({ at, diameterMm }): Region => {
    const ring = containingRing(circleCurve(at, diameterMm / 2), MARK_TOLERANCE_MM);
    return { outer: orientRing(ring, 'outer'), openings: [] };
  });
  const lines = [...shape.stitchLines, ...shape.foldLines, ...shape.skiveLines, ...shape.cementLines];
  const strips = lines.flatMap(({ curve }) =>
    bufferedLine(flattenCurve(curve, MARK_TOLERANCE_MM), MARK_WIDTH_MM),
  );
  const free = subtractRegions([region], [...holes, ...strips]);
  const [largest = region] = [...free].sort((a, b) => regionArea(b) - regionArea(a));
  return largest;
}
