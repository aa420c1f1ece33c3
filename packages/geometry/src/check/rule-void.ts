import { findTooNear } from './clearance.js';
import type { Shortfall } from './clearance.js';
import type { CheckContext, Placed, QualityArea } from './context.js';
import type { Finding } from './violation.js';

/** Rule `void`: an item keeps the void distance, and what is uncertain of its place, to every void region. */
export function findVoidFaults(context: CheckContext): readonly Finding[] {
  const findings: Finding[] = [];
  for (const placed of context.placed) {
    for (const quality of placed.sheet.qualities) {
      if (!quality.quality.isVoid) continue;
      const required = context.problem.distances.void + quality.quality.uncertaintyMm;
      const shortfall = worstShortfall(placed, quality, required);
      if (shortfall === undefined) continue;
      findings.push({
        rule: 'void',
        at: placed.copy,
        other: quality.quality.id,
        sheet: placed.placement.sheet,
        place: shortfall.place,
        measured: shortfall.measured,
        required,
      });
    }
  }
  return findings;
}

function worstShortfall(placed: Placed, quality: QualityArea, required: number): Shortfall | undefined {
  let worst: Shortfall | undefined;
  for (const area of quality.areas) {
    const shortfall = findTooNear(placed.area, area, required);
    if (shortfall !== undefined && (worst === undefined || shortfall.measured < worst.measured)) {
      worst = shortfall;
    }
  }
  return worst;
}
