import type { Point } from '../types/shape.js';
import { placePoint } from './area.js';
import type { CheckContext, Placed } from './context.js';
import { FORGIVEN_MM } from './forgiven.js';
import { thicknessAt } from './thickness-at.js';
import type { Finding } from './violation.js';

/**
 * Rule `thickness`: at an item's centroid and at each grid point within it the leather is as thick as it needs;
 * leather that is too thick will do where it is skived. A sheet of unknown thickness proves nothing either way.
 */
export function findThicknessFaults(context: CheckContext): readonly Finding[] {
  const findings: Finding[] = [];
  for (const placed of context.placed) {
    const fault = thicknessFaultOf(placed, context.proofPoints(placed.item));
    if (fault !== undefined) findings.push(fault);
  }
  return findings;
}

function thicknessFaultOf(placed: Placed, ownPoints: readonly Point[]): Finding | undefined {
  const need = placed.item.thickness;
  const field = placed.sheet.sheet.thickness;
  if (need === undefined || field === undefined) return undefined;
  let worst: { readonly off: number; readonly finding: Finding } | undefined;
  for (const own of ownPoints) {
    const place = placePoint(own.x, own.y, placed.placing);
    const [thinnest, thickest] = thicknessAt(field, place);
    const thin = need.minMm - thinnest;
    const thick = need.tooThick === 'skive' ? -Infinity : thickest - need.maxMm;
    const off = Math.max(thin, thick);
    if (off <= FORGIVEN_MM || (worst !== undefined && off <= worst.off)) continue;
    const [measured, required] = thin >= thick ? [thinnest, need.minMm] : [thickest, need.maxMm];
    const { copy, placement } = placed;
    worst = {
      off,
      finding: { rule: 'thickness', at: copy, sheet: placement.sheet, place, measured, required },
    };
  }
  return worst?.finding;
}
