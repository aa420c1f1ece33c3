import { createRandom } from '../number/random.js';
import { sinCosDeg } from '../number/trigonometry.js';
import type { Curve, CurveSegment, Point } from '../types/shape.js';

/** A closed curve of lines, arcs and cubics about the origin, some 60 to 140 mm wide, that does not cross itself; every second one runs backwards. */
export function drawnCurve(seed: number): Curve {
  const random = createRandom(seed);
  const count = 4 + random.integer(5);
  const at = (share: number, radius: number): Point => {
    const { sin, cos } = sinCosDeg(share * (seed % 2 === 0 ? 360 : -360));
    return { x: radius * cos, y: radius * sin };
  };
  const radii = Array.from({ length: count }, () => random.between(30, 70));
  const segments: CurveSegment[] = radii.map((radius, i) => {
    const next = radii[(i + 1) % count]!;
    const to = at(((i + 1) % count) / count, next);
    const kind = random.integer(3);
    if (kind === 0) return { kind: 'line', to };
    if (kind === 1) {
      return { kind: 'arc', via: at((i + 0.5) / count, ((radius + next) / 2) * random.between(0.75, 1)), to };
    }
    return {
      kind: 'cubic',
      handle1: at((i + 0.35) / count, radius * random.between(0.9, 1.2)),
      handle2: at((i + 0.65) / count, next * random.between(0.9, 1.2)),
      to,
    };
  });
  return { start: at(0, radii[0]!), segments, closed: true };
}
