import type { Area } from './area.js';
import type { CheckContext, Placed } from './context.js';
import { FORGIVEN_MM } from './forgiven.js';
import { outsideUnionDeeperThan } from './union-outside.js';
import type { Finding } from './violation.js';

/** Rule `zone`: what needs certain zones lies within their union. */
export function findZoneFaults(context: CheckContext): readonly Finding[] {
  const findings: Finding[] = [];
  for (const placed of context.placed) {
    for (const { part, need, areas } of context.needsOf(placed)) {
      if (need.zones === undefined) continue;
      const allowed = areasOfZones(placed, need.zones);
      for (const area of areas) {
        const outside = outsideUnionDeeperThan(area, allowed, FORGIVEN_MM);
        if (outside === undefined) continue;
        findings.push({
          rule: 'zone',
          at: placed.copy,
          other: need.zones.join(', '),
          ...(part === undefined ? {} : { part }),
          sheet: placed.placement.sheet,
          place: outside.place,
          ...(Number.isFinite(outside.depth) ? { measured: -outside.depth, required: 0 } : {}),
        });
        break;
      }
    }
  }
  return findings;
}

function areasOfZones(placed: Placed, zones: readonly string[]): readonly Area[] {
  return placed.sheet.qualities
    .filter(({ quality }) => quality.zone !== undefined && zones.includes(quality.zone))
    .flatMap(({ areas }) => areas);
}
