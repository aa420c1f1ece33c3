import { createRandom } from '@hidebound/geometry';
import type { Point, Region, Ring } from '@hidebound/geometry';

/** An invented hide of some 2.0 × 1.7 m with lobes for legs; `lopsided` 0 makes both halves alike. */
export function testHide(lopsided: number, openings: readonly Point[] = []): Region {
  const outer: Point[] = [];
  for (let deg = 0; deg < 360; deg += 0.5) {
    const t = (deg * Math.PI) / 180;
    const r =
      850 +
      90 * Math.cos(2 * t) +
      70 * Math.cos(4 * t) +
      60 * Math.cos(t) +
      lopsided * (50 * Math.sin(3 * t + 0.4) + 30 * Math.sin(t));
    outer.push({ x: 1000 + r * Math.cos(t), y: 900 + 0.85 * r * Math.sin(t) });
  }
  return { outer, openings: openings.map((at) => circle(at, 25).reverse()) };
}

function circle({ x, y }: Point, radius: number): Point[] {
  return Array.from({ length: 24 }, (_, i) => {
    const t = (i * Math.PI) / 12;
    return { x: x + radius * Math.cos(t), y: y + radius * Math.sin(t) };
  });
}

/** Every corner moved by chance, as two traces of one outline differ. */
export function roughened(region: Region, byMm: number, seed: number): Region {
  const random = createRandom(seed);
  const rough = (ring: Ring): Ring =>
    ring.map(({ x, y }) => ({ x: x + byMm * random.normal(), y: y + byMm * random.normal() }));
  return { outer: rough(region.outer), openings: region.openings.map(rough) };
}
