import { findTooNearEdge } from './clearance.js';
import type { CheckContext } from './context.js';
import type { Finding } from './violation.js';

/** Rule `edge`: an item lies within its sheet and keeps the edge distance to its outline and openings. */
export function findEdgeFaults(context: CheckContext): readonly Finding[] {
  const required = context.problem.distances.edge;
  const findings: Finding[] = [];
  for (const placed of context.placed) {
    const shortfall = findTooNearEdge(placed.area, placed.sheet.area, required);
    if (shortfall === undefined) continue;
    findings.push({
      rule: 'edge',
      at: placed.copy,
      other: nameOfRing(shortfall.ring),
      sheet: placed.placement.sheet,
      place: shortfall.place,
      measured: shortfall.measured,
      required,
    });
  }
  return findings;
}

function nameOfRing(ring: number | undefined): string {
  return ring === undefined || ring === 0 ? 'outline' : `opening ${ring}`;
}
