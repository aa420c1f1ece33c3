import { findSelfCrossing, ringArea, unionRegions } from '@hidebound/geometry';
import type { Point, Ring } from '@hidebound/geometry';

/** The ring through moved points, without the small loops that arise where the edge turns sharply. */
export function untangled(before: Ring, moved: Ring): Ring {
  let kept = moved.map((point, i) => ({ point, was: before[i]! }));
  for (let round = 0; round < 4; round++) {
    const forth = kept.filter(({ point, was }, i) => {
      const last = kept[(i + kept.length - 1) % kept.length]!;
      return (
        (point.x - last.point.x) * (was.x - last.was.x) + (point.y - last.point.y) * (was.y - last.was.y) > 0
      );
    });
    if (forth.length === kept.length || forth.length < 8) break;
    kept = forth;
  }
  return withoutCrossings(kept.map(({ point }) => point));
}

/** The largest part of a ring that may cross itself, with the orientation of the whole. */
export function withoutCrossings(ring: Ring): Ring {
  if (findSelfCrossing(ring) === undefined) return ring;
  const isOuter = ringArea(ring) > 0;
  const turned: Point[] = isOuter ? [...ring] : [...ring].reverse();
  const parts = unionRegions([{ outer: turned, openings: [] }]);
  const largest = parts.reduce<Ring>(
    (best, { outer }) => (ringArea(outer) > ringArea(best) ? outer : best),
    parts[0]?.outer ?? ring,
  );
  return isOuter ? largest : [...largest].reverse();
}
