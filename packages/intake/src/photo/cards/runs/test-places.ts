import { createRandom, curveLength, curveSteps, flattenCurve } from '@hidebound/geometry';
import type { Curve } from '@hidebound/geometry';
import type { EdgePlace } from './edge-place.js';

/** Places along a true line, so far apart, each off by chance (even, up to `noiseMm` either way). For tests. */
export function placesAlong(curve: Curve, stepMm: number, noiseMm: number, seed: number): EdgePlace[] {
  const random = createRandom(seed);
  const count = Math.round(curveLength(curve) / stepMm);
  const points = flattenCurve(curve, 0.0005);
  const lengths = [0];
  for (let i = 1; i < points.length; i++)
    lengths.push(
      lengths[i - 1]! + Math.hypot(points[i]!.x - points[i - 1]!.x, points[i]!.y - points[i - 1]!.y),
    );
  const total = lengths.at(-1)!;
  const noise = () => (random.next() * 2 - 1) * noiseMm;
  let k = 1;
  return Array.from({ length: count }, (_, i) => {
    const at = ((i + 0.5) / count) * total;
    while (lengths[k]! < at) k++;
    const share = (at - lengths[k - 1]!) / (lengths[k]! - lengths[k - 1]!);
    const [a, b] = [points[k - 1]!, points[k]!];
    return {
      x: a.x + (b.x - a.x) * share + noise(),
      y: a.y + (b.y - a.y) * share + noise(),
      weightMm: total / count,
    };
  });
}

/** "line 4, arc 4": how many segments of each kind. For tests. */
export function kindsOf(curve: Curve): string {
  const kinds = curveSteps(curve).map(({ segment }) => segment.kind);
  const count = (kind: string) => kinds.filter((one) => one === kind).length;
  return `${count('line')} lines, ${count('arc')} arcs`;
}
