import type { CheckContext } from './context.js';
import { copyKey, copyRef } from './violation.js';
import type { Finding } from './violation.js';

/** Rule `locked`: what was fixed lies where it was fixed, number for number. */
export function findLockedFaults(context: CheckContext): readonly Finding[] {
  const findings: Finding[] = [];
  for (const fixed of context.problem.fixed) {
    const placement = context.byCopy.get(copyKey(fixed))?.placement;
    const base = { rule: 'locked', at: copyRef(fixed), sheet: fixed.sheet } as const;
    if (placement === undefined) {
      findings.push(base);
      continue;
    }
    if (placement.sheet === fixed.sheet && placement.x === fixed.x && placement.y === fixed.y) {
      if (placement.rotationDeg === fixed.rotationDeg) continue;
      const measured = Math.abs(placement.rotationDeg - fixed.rotationDeg);
      findings.push({ ...base, place: { x: fixed.x, y: fixed.y }, measured, required: 0 });
      continue;
    }
    const isMoved = placement.sheet === fixed.sheet;
    findings.push({
      ...base,
      place: { x: fixed.x, y: fixed.y },
      ...(isMoved ? { measured: Math.hypot(placement.x - fixed.x, placement.y - fixed.y), required: 0 } : {}),
    });
  }
  return findings;
}
