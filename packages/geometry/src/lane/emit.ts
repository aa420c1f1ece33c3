import { roundDeg } from '../nest/angle.js';
import type { Frame } from '../nest/frame.js';
import { roundedPlace, toU, toV } from '../nest/frame.js';
import { roundCoordinate } from '../point.js';
import { GRID_MM } from '../tolerance.js';
import type { CopyRef, Lane, LaneRow, Placement } from '../types/problem.js';
import type { Point } from '../types/shape.js';
import { ALONG_SLACK_MM, NUDGE_STEPS } from './constants.js';
import { isFreeAt } from './free-spans.js';
import type { LaneSite } from './lane-site.js';
import { edgeOf, obstaclesFor, ruleHolds } from './lane-site.js';
import type { SeatedStrap } from './row.js';
import type { LaneDraft } from './stack.js';
import type { StrapKind } from './strap-kind.js';

/** A lane as an answer holds it. */
export interface LaidLane {
  readonly lane: Lane;
  readonly placements: readonly Placement[];
}

/**
 * The lane on the 0.001 mm grid, each strap proven where it lies after rounding; undefined if one of them isn't.
 * `nextCopy` gives the copy that takes the next place of a kind.
 */
export function emitLane(
  draft: LaneDraft,
  id: string,
  nextCopy: (kind: StrapKind) => CopyRef,
): LaidLane | undefined {
  const { site, side, rows } = draft;
  const sheet = site.space.sheet.id;
  const placements: Placement[] = [];
  const laneRows: LaneRow[] = [];
  for (const { lowV, widthMm, straps } of rows) {
    const v = lowV + widthMm / 2;
    const copies: CopyRef[] = [];
    for (const strap of side > 0 ? straps : [...straps].reverse()) {
      const at = provenPlace(site, strap, v);
      if (at === undefined) return undefined;
      const { item, set, copy } = nextCopy(strap.kind);
      copies.push({ item, set, copy });
      const rotationDeg = roundDeg(site.space.angleDeg + strap.shape.turnDeg);
      placements.push({ item, set, copy, sheet, ...at, rotationDeg });
    }
    laneRows.push({ widthMm, straps: copies });
  }
  return { lane: { id, sheet, ...firstCut(draft), kerfMm: site.kerfMm, rows: laneRows }, placements };
}

function provenPlace(site: LaneSite, { kind, shape, u }: SeatedStrap, v: number): Point | undefined {
  const { space } = site;
  const at = placeOnLine(space.frame, u, v);
  const gridU = toU(space.frame, at.x, at.y);
  const gridV = toV(space.frame, at.x, at.y);
  const isFree = isFreeAt(space, shape, gridU, gridV, edgeOf(site, kind), obstaclesFor(site, kind));
  return isFree && ruleHolds(site, kind, shape, gridU, gridV) ? at : undefined;
}

/** The straps lie on its right: rows towards greater v go with a cut towards greater u. */
function firstCut(draft: LaneDraft): Pick<Lane, 'from' | 'to' | 'openAt'> {
  const { site, side, openSign, openT, lowV, highV } = draft;
  const endT = draft.endT + (site.isStraight ? 0 : ALONG_SLACK_MM);
  const outT = Math.floor(openT / GRID_MM) * GRID_MM;
  const inT = Math.ceil(endT / GRID_MM) * GRID_MM;
  const v = side > 0 ? lowV : highV;
  const open = placeOnLine(site.space.frame, openSign * outT, v);
  const closed = placeOnLine(site.space.frame, openSign * inT, v);
  return side === openSign
    ? { from: open, to: closed, openAt: 'from' }
    : { from: closed, to: open, openAt: 'to' };
}

/**
 * The place of the grid that lies nearest to the line v among those nearest to (u, v): rounding may move it along the
 * lane, where there is room, but hardly across, where lines are shared.
 */
function placeOnLine(frame: Frame, u: number, v: number): Point {
  const centre = roundedPlace(frame, u, v);
  if (frame.fx === 0 || frame.fy === 0) return centre;
  let best = centre;
  let least = Math.abs(toV(frame, centre.x, centre.y) - v);
  const most = NUDGE_STEPS * GRID_MM;
  for (let j = -NUDGE_STEPS; j <= NUDGE_STEPS; j++) {
    for (let i = -NUDGE_STEPS; i <= NUDGE_STEPS; i++) {
      const x = roundCoordinate(centre.x + i * GRID_MM);
      const y = roundCoordinate(centre.y + j * GRID_MM);
      const off = Math.abs(toV(frame, x, y) - v);
      if (off >= least || Math.abs(toU(frame, x, y) - u) > most) continue;
      least = off;
      best = { x, y };
    }
  }
  return best;
}
