import { PAPER_RING } from '@hidebound/leather';
import { createRandom, pointInRing } from '@hidebound/geometry';
import type { Point, Ring } from '@hidebound/geometry';

/** Where a reference sheet lies: its middle and its turn clockwise. */
export interface LaidSheet extends Point {
  readonly sheet: number;
  readonly turnDeg: number;
}

/** Sheets keep off leather and off each other by so much. */
const APART_MM = 22;
const STEP_MM = 12;
const PAPER_SAMPLES_A_SIDE = 7;

/** Sheets all around, each as near to the hides as it can lie. */
export function laySheets(count: number, outlines: readonly Ring[], seed: number): readonly LaidSheet[] {
  const random = createRandom(seed);
  const points = outlines.flat();
  const middle = middleOf(points);
  const thinned = points.filter((_, i) => i % 5 === 0);
  const laid: LaidSheet[] = [];
  for (let i = 0; i < count; i++) {
    // Four go to the corners; more of them between.
    const turn = 360 * ((i + 0.5) / Math.max(count, 1)) + random.between(-9, 9) + (count === 4 ? -8 : 0);
    const [sin, cos] = [Math.sin((turn * Math.PI) / 180), Math.cos((turn * Math.PI) / 180)];
    const turnDeg = 90 * random.integer(4) + random.between(-24, 24);
    for (let out = 0; ; out += STEP_MM) {
      const sheet = { sheet: i + 1, x: middle.x + out * cos, y: middle.y + out * sin, turnDeg };
      const paper = paperRing(sheet);
      const isOnLeather = outlines.some((ring) => pointInRing(sheet, ring) !== 'outside');
      if (isOnLeather || nearest(samples(paper), thinned) < APART_MM) continue;
      if (laid.some((other) => nearest(samples(paper), samples(paperRing(other))) < APART_MM)) continue;
      laid.push(sheet);
      break;
    }
  }
  return laid;
}

/** The paper's corners on the floor. */
export function paperRing({ x, y, turnDeg }: LaidSheet): Ring {
  const sin = Math.sin((turnDeg * Math.PI) / 180);
  const cos = Math.cos((turnDeg * Math.PI) / 180);
  return PAPER_RING.map((corner) => ({
    x: x + cos * corner.x - sin * corner.y,
    y: y + sin * corner.x + cos * corner.y,
  }));
}

function samples(ring: Ring): readonly Point[] {
  return ring.flatMap((from, i) => {
    const to = ring[(i + 1) % ring.length]!;
    return Array.from({ length: PAPER_SAMPLES_A_SIDE }, (_, k) => {
      const t = k / PAPER_SAMPLES_A_SIDE;
      return { x: from.x + t * (to.x - from.x), y: from.y + t * (to.y - from.y) };
    });
  });
}

function nearest(some: readonly Point[], others: readonly Point[]): number {
  let best = Infinity;
  for (const a of some) for (const b of others) best = Math.min(best, (a.x - b.x) ** 2 + (a.y - b.y) ** 2);
  return Math.sqrt(best);
}

function middleOf(points: readonly Point[]): Point {
  const xs = points.map(({ x }) => x);
  const ys = points.map(({ y }) => y);
  return {
    x: (Math.min(...xs) + Math.max(...xs)) / 2,
    y: (Math.min(...ys) + Math.max(...ys)) / 2,
  };
}
