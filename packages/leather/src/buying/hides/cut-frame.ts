import {
  applyAffine,
  composeAffine,
  curveArea,
  curveBox,
  findSelfCrossing,
  flattenCurve,
  roundCurve,
  roundPoint,
  scaling,
  transformCurve,
  translation,
} from '@hidebound/geometry';
import type { Curve, Point, Random } from '@hidebound/geometry';
import type { CutSizeRule, Span } from '../../model/workshop-rules.js';
import { drawOutline } from './draw-outline.js';
import type { PlanSize } from './draw-outline.js';
import type { HidePlan, Share } from './hide-plan.js';

/** An outline of some area, and where the shares of its plan lie on it. */
export interface CutFrame {
  readonly outline: Curve;
  readonly areaMm2: number;
  /** Place of a share; the far side of a whole hide has negative shares outwards. */
  readonly at: (share: Share) => Point;
  readonly size: PlanSize;
}

/** Rougher outlines than this share of the usual are tried no more once they cross themselves. */
const TRIES = [1, 0.6, 0.3, 0];

/**
 * Draws the outline of a plan so that it encloses the area, with proportions within the row's spans where they and the
 * area allow it. The head lies to the left; the box of the outline starts at 0, 0.
 * @param isRight the backbone lies below: a right side, seen from the grain side
 */
export function frameOfCut(
  random: Random,
  plan: HidePlan,
  rule: CutSizeRule,
  areaMm2: number,
  isRight: boolean,
): CutFrame {
  const wanted = plannedSize(random, plan, rule, areaMm2);
  for (const roughness of TRIES) {
    const drawn = drawOutline(random.fork(9), plan, wanted, { roughness });
    if (findSelfCrossing(flattenCurve(drawn).slice(0, -1)) !== undefined && roughness > 0) continue;
    return placed(drawn, wanted, areaMm2, isRight);
  }
  throw new Error(`The outline of a ${rule.name} crosses itself.`);
}

/** As much of its box as a plan fills is known once it is drawn; then length and width are drawn for the area. */
function plannedSize(random: Random, plan: HidePlan, rule: CutSizeRule, areaMm2: number): PlanSize {
  const { lengthMm, widthMm } = rule;
  const halves = plan.isWhole ? 2 : 1;
  const box = { lengthMm: 1000, reachMm: 1000 };
  const filled = Math.abs(curveArea(drawOutline(random, plan, box, { roughness: 0 }))) / (1e6 * halves);
  const boxMm2 = areaMm2 / filled;
  const along: Span = {
    min: Math.max(lengthMm.min, boxMm2 / widthMm.max),
    max: Math.min(lengthMm.max, boxMm2 / widthMm.min),
  };
  const share = random.between(0.2, 0.8);
  // Where no proportion of the spans gives the area, their middle one does.
  const ratio = (lengthMm.min + lengthMm.max) / (widthMm.min + widthMm.max);
  const length =
    along.min <= along.max ? along.min + share * (along.max - along.min) : Math.sqrt(boxMm2 * ratio);
  return { lengthMm: length, reachMm: boxMm2 / length / halves };
}

function placed(drawn: Curve, wanted: PlanSize, areaMm2: number, isRight: boolean): CutFrame {
  const grow = Math.sqrt(areaMm2 / Math.abs(curveArea(drawn)));
  const sized = scaling(grow, isRight ? -grow : grow);
  const box = curveBox(transformCurve(sized, drawn));
  const move = composeAffine(translation(-box.minX, -box.minY), sized);
  const outline = roundCurve(transformCurve(move, drawn));
  return {
    outline,
    areaMm2: Math.abs(curveArea(outline)),
    at: ([along, out]) =>
      roundPoint(applyAffine(move, { x: along * wanted.lengthMm, y: out * wanted.reachMm })),
    size: { lengthMm: grow * wanted.lengthMm, reachMm: grow * wanted.reachMm },
  };
}
