import { beforeAll, describe, expect, it } from 'vitest';
import {
  DEFAULT_WORKSHOP,
  effectOf,
  madeUpHide,
  parseHide,
  squareFeetToMm2,
  writeHide,
} from '@hidebound/leather';
import type { CutSizeRule, Flaw, Hide } from '@hidebound/leather';
import { loadJudge } from '../packages/geometry/test-support/judge.js';
import type { Judge, JudgeShape } from '../packages/geometry/test-support/judge.js';

/**
 * Trial hides against what is published of cuts and grades. Curves are drawn here anew, by their Bernstein form, and
 * areas of flaws are measured by jsts (the JTS Topology Suite), neither of which made the hides.
 */

const MINUTES_MS = 240_000;

type Curve = Hide['outline'];
type Point = Curve['start'];

let judge: Judge;
beforeAll(async () => {
  judge = await loadJudge();
});

const POINTS_PER_CUBIC = 24;

function ringOf({ start, segments }: Curve): Point[] {
  const ring: Point[] = [];
  let from = start;
  for (const segment of segments) {
    if (segment.kind === 'arc') throw new Error('No trial hide has arcs.');
    ring.push(from);
    for (let i = 1; segment.kind === 'cubic' && i < POINTS_PER_CUBIC; i++) {
      const t = i / POINTS_PER_CUBIC;
      const weights = [(1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t ** 3];
      const ends = [from, segment.handle1, segment.handle2, segment.to];
      ring.push({
        x: ends.reduce((sum, p, k) => sum + weights[k]! * p.x, 0),
        y: ends.reduce((sum, p, k) => sum + weights[k]! * p.y, 0),
      });
    }
    from = segment.to;
  }
  return ring;
}

/** The shoelace formula. */
function areaOf(curve: Curve): number {
  const ring = ringOf(curve);
  return Math.abs(
    ring.reduce((sum, p, i) => {
      const q = ring[(i + 1) % ring.length]!;
      return sum + (p.x * q.y - q.x * p.y) / 2;
    }, 0),
  );
}

const shapeOf = (ring: readonly Point[]): JudgeShape => judge.shapeOf({ outer: ring, openings: [] });

function coveredBy({ shape }: Flaw): JudgeShape[] {
  if (shape.kind === 'area') return [shapeOf(ringOf(shape.outline))];
  if (shape.kind === 'point') return [judge.buffer(judge.pointAt(shape.at), shape.radiusMm)];
  const half = shape.widthMm / 2;
  return shape.line.slice(1).map((to, i) => {
    const from = shape.line[i]!;
    const length = Math.hypot(to.x - from.x, to.y - from.y);
    const [x, y] = [((to.y - from.y) / length) * half, ((from.x - to.x) / length) * half];
    return shapeOf([
      { x: from.x + x, y: from.y + y },
      { x: to.x + x, y: to.y + y },
      { x: to.x - x, y: to.y - y },
      { x: from.x - x, y: from.y - y },
    ]);
  });
}

/** Neither open nor never to be used nor ugly, over the area less the openings. Marks of this kind never overlap. */
function usableShare(hide: Hide): number {
  const leather = shapeOf(ringOf(hide.outline));
  const open = hide.openings.reduce((sum, opening) => sum + areaOf(opening), 0);
  const bad = hide.flaws
    .filter((flaw) => effectOf(flaw).isVoid || effectOf(flaw).looks === 'C')
    .flatMap(coveredBy)
    .reduce((sum, shape) => sum + judge.intersectionArea(leather, shape), 0);
  return 1 - bad / (leather.getArea() - open);
}

function cutNamed(name: string): CutSizeRule {
  return DEFAULT_WORKSHOP.cuts.find((row) => row.name === name)!;
}

function spanOfGrade(grade: string): { readonly min: number; readonly max: number } {
  return DEFAULT_WORKSHOP.grades.find((row) => row.grade === grade)!.usableShare;
}

const FLAWLESS = { min: 1, max: 1 };

describe('trial hides', () => {
  // Square feet; the source of each row is a published list of cuts unless it says otherwise.
  const published: readonly (readonly [name: string, min: number, max: number, source: string])[] = [
    ['whole hide', 35, 70, 'upholstery and craft suppliers’ size pages (45–55 usual, 35–70 seen)'],
    ['side', 18, 26, 'craft suppliers’ size pages (18–22, 21–26)'],
    ['back', 15, 18, 'craft supplier’s size page'],
    ['bend', 11, 15, 'craft supplier’s cuts list'],
    ['butt', 16, 24, 'from memory; one measured 1400 × 1400 mm, belt maker’s page'],
    ['double bend', 22, 26, 'craft supplier’s cuts list'],
    ['shoulder', 7, 12, 'craft supplier’s cuts list'],
    ['double shoulder', 11, 15, 'craft supplier’s cuts list'],
    ['belly', 4, 8, 'craft supplier’s size page'],
    ['kip', 9, 17, 'craft supplier’s size page'],
    ['calf skin', 8, 10, 'hide supplier’s page (baby calf)'],
    ['calf side', 12, 14, 'hide supplier’s page (half hide of calf)'],
    ['upholstery calf', 25, 30, 'hide supplier’s page'],
    ['goat skin', 4, 7, 'from memory'],
    ['sheep skin', 5, 9, 'from memory'],
    ['pig skin', 8, 14, 'from memory'],
    ['deer skin', 7, 12, 'from memory'],
    ['horse butt', 6, 9, 'specialist supplier’s page (pairs)'],
  ];

  it('when the table of cuts is read, each of its rows is held against a published size here', () => {
    expect(DEFAULT_WORKSHOP.cuts.map(({ name }) => name)).toEqual(published.map(([name]) => name));
  });

  it.each(published)(
    'when 200 of %s are made, each has from %d to %d ft² (%s)',
    (name, min, max) => {
      const rule = cutNamed(name);
      const areas = Array.from({ length: 200 }, (_, number) => {
        const hide = madeUpHide(rule, { seed: 11, number, usableShare: FLAWLESS });
        const area = areaOf(hide.outline);
        expect(Math.abs(hide.area.measuredMm2! / area - 1)).toBeLessThan(0.005);
        return area;
      });
      expect(Math.min(...areas)).toBeGreaterThanOrEqual(squareFeetToMm2(min) * 0.999);
      expect(Math.max(...areas)).toBeLessThanOrEqual(squareFeetToMm2(max) * 1.001);
      // Drawn evenly from the row's span: so many come near both of its ends.
      const span = rule.areaMm2.max - rule.areaMm2.min;
      expect(Math.max(...areas) - Math.min(...areas)).toBeGreaterThan(0.9 * span);
    },
    MINUTES_MS,
  );

  // Source of the shares: bulletin of a footwear research body, five-point system: A 95.1–100, B 90.1–95, C 85.1–90, D 80.1–85, E 75.1–80, F 70–75 %.
  const grades: readonly (readonly [grade: string, min: number, max: number])[] = [
    ['A', 0.951, 1],
    ['B', 0.901, 0.95],
    ['C', 0.851, 0.9],
    ['D', 0.801, 0.85],
    ['E', 0.751, 0.8],
    ['F', 0.7, 0.75],
  ];
  it.each(grades)(
    'when hides of grade %s are made, from %d to %d of each is usable, as jsts measures it',
    (grade, min, max) => {
      for (const name of ['side', 'double shoulder', 'bend', 'belly', 'goat skin']) {
        for (let number = 1; number <= 4; number++) {
          const hide = madeUpHide(cutNamed(name), { seed: 12, number, usableShare: spanOfGrade(grade) });
          const share = usableShare(hide);
          expect(share, `${name} ${number}`).toBeGreaterThanOrEqual(min);
          expect(share, `${name} ${number}`).toBeLessThanOrEqual(max);
        }
      }
    },
    MINUTES_MS,
  );

  it(
    'when a hide of any cut is written, it reads back as a valid hide and writes the same text again',
    () => {
      for (const rule of DEFAULT_WORKSHOP.cuts) {
        for (const grade of ['A', 'F']) {
          const hide = madeUpHide(rule, {
            seed: 13,
            number: 3,
            usableShare: spanOfGrade(grade),
            tannage: 'vegetable',
          });
          const text = writeHide(hide);
          const read = parseHide(text, { file: 'trial.hide.json' });
          expect(writeHide(read)).toBe(text);
          expect(judge.isValid(shapeOf(ringOf(read.outline)))).toBe(true);
        }
      }
    },
    MINUTES_MS,
  );

  it('when seed and number are the same the hide is, to the byte; when either differs it is another', () => {
    const made = (seed: number, number: number): string =>
      writeHide(madeUpHide(cutNamed('side'), { seed, number }));
    expect(made(1, 2)).toBe(made(1, 2));
    expect(new Set([made(1, 1), made(1, 2), made(2, 1), made(2, 2)]).size).toBe(4);
  });

  it.each(['side', 'back', 'bend', 'shoulder', 'calf side'])(
    'when a %s is made, it is straight along its backbone, which is its edge; lefts and rights both come',
    (name) => {
      const sides = new Set<string>();
      for (let number = 0; number < 24; number++) {
        const hide = madeUpHide(cutNamed(name), { seed: 14, number, usableShare: FLAWLESS });
        const backbone = hide.backbone!;
        const ys = ringOf(hide.outline).map(({ y }) => y);
        const isAbove = backbone[0]!.y < (Math.min(...ys) + Math.max(...ys)) / 2;
        sides.add(isAbove ? 'left' : 'right');
        const edge = judge.shapeOf({ outer: ringOf(hide.outline), openings: [] }).getBoundary();
        for (const p of backbone) {
          expect(p.y).toBe(backbone[0]!.y);
          expect(judge.distance(judge.pointAt(p), edge)).toBeLessThan(0.002);
        }
        // Head to tail, and nearly all of the straight edge.
        const xs = ringOf(hide.outline).map(({ x }) => x);
        const length = backbone[backbone.length - 1]!.x - backbone[0]!.x;
        expect(length).toBeGreaterThan(0.8 * (Math.max(...xs) - Math.min(...xs)));
      }
      expect([...sides].sort()).toEqual(['left', 'right']);
    },
  );

  it.each([
    'whole hide',
    'butt',
    'double shoulder',
    'kip',
    'goat skin',
    'sheep skin',
    'pig skin',
    'horse butt',
  ])('when a %s is made, its backbone halves it within 4 hundredths', (name) => {
    for (let number = 0; number < 10; number++) {
      const hide = madeUpHide(cutNamed(name), { seed: 15, number, usableShare: FLAWLESS });
      const { y } = hide.backbone![0]!;
      const above = shapeOf([
        { x: -1e4, y: -1e4 },
        { x: 1e4, y: -1e4 },
        { x: 1e4, y },
        { x: -1e4, y },
      ]);
      const whole = shapeOf(ringOf(hide.outline));
      expect(Math.abs(judge.intersectionArea(whole, above) / whole.getArea() - 0.5)).toBeLessThan(0.04);
    }
  });

  it('when a belly is made, it has no backbone, but a line along which it stretches least', () => {
    const hide = madeUpHide(cutNamed('belly'), { seed: 16, number: 1 });
    expect(hide.backbone).toBeUndefined();
    expect(hide.tightness.length).toBeGreaterThan(0);
  });

  it('when a side is made, bend, shoulder, belly, neck and shanks lie where they do on an animal', () => {
    // Common practice, no source: from head to tail neck, shoulder, bend; the belly on the side away from the backbone.
    for (let number = 0; number < 10; number++) {
      const hide = madeUpHide(cutNamed('side'), { seed: 17, number, usableShare: FLAWLESS });
      const middle = (kind: string): Point => {
        const rings = hide.zones.filter((zone) => zone.kind === kind).map(({ outline }) => ringOf(outline));
        const ring = rings.sort((a, b) => b.length - a.length)[0]!;
        return {
          x: ring.reduce((sum, p) => sum + p.x / ring.length, 0),
          y: ring.reduce((sum, p) => sum + p.y / ring.length, 0),
        };
      };
      const back = hide.backbone![0]!.y;
      expect(middle('neck').x).toBeLessThan(middle('shoulder').x);
      expect(middle('shoulder').x).toBeLessThan(middle('bend').x);
      expect(Math.abs(middle('belly').y - back)).toBeGreaterThan(Math.abs(middle('bend').y - back));
      expect(hide.zones.filter(({ kind }) => kind === 'shank').length).toBeGreaterThanOrEqual(2);
    }
  });
});
