import { createRandom } from '@hidebound/geometry';
import type { Curve, CurveSegment, Point, Random } from '@hidebound/geometry';
import { FLAW_KINDS } from '@hidebound/leather';
import type { Flaw, Hide, HideCut, Zone } from '@hidebound/leather';

/** Invented outlines for tests: seen from the grain side, head to the left, mm. */
const SIDE: readonly Point[] = points(
  '-10 330, 5 160, 70 45, 260 10, 620 0, 1200 0, 1800 6, 2060 24, 2150 130, 2120 270, 2190 480, 2240 690, 2140 760, ' +
    '2030 650, 1900 800, 1740 890, 1400 950, 1000 985, 720 940, 610 870, 560 1060, 450 1120, 385 960, 340 780, 160 700, 30 560',
);
const SHOULDER: readonly Point[] = points(
  '0 80, 60 0, 400 -25, 700 -20, 1000 -25, 1340 0, 1400 80, 1370 330, 1330 560, 1390 700, 1290 760, 1120 700, 700 790, ' +
    '300 700, 110 770, 10 690, 70 560, 25 330',
);

function points(text: string): Point[] {
  return text.split(', ').map((pair) => {
    const [x, y] = pair.split(' ').map(Number);
    return { x: x!, y: y! };
  });
}

/** A smooth closed line through points: each handle a sixth of the way between the neighbours. */
export function smoothCurve(through: readonly Point[]): Curve {
  const n = through.length;
  const at = (i: number): Point => through[(i + n) % n]!;
  const segments: CurveSegment[] = through.map((p, i) => {
    const next = at(i + 1);
    return {
      kind: 'cubic',
      handle1: { x: p.x + (next.x - at(i - 1).x) / 6, y: p.y + (next.y - at(i - 1).y) / 6 },
      handle2: { x: next.x - (at(i + 2).x - p.x) / 6, y: next.y - (at(i + 2).y - p.y) / 6 },
      to: next,
    };
  });
  return { start: through[0]!, segments, closed: true };
}

export interface SampleHide {
  readonly id: string;
  readonly kind: 'side' | 'shoulder';
  readonly seed: number;
  readonly flaws: number;
  /** Turned by a quarter, so that it stands upright. */
  readonly upright?: boolean;
}

/** An invented hide with flaws of every kind, zones, a backbone and a stroke. */
export function sampleHide(options: SampleHide): Hide {
  const random = createRandom(options.seed);
  const isSide = options.kind === 'side';
  const turn = (p: Point): Point => (options.upright === true ? { x: 1000 - p.y, y: p.x } : p);
  const outline = (isSide ? SIDE : SHOULDER)
    .map((p) => ({
      x: p.x + random.between(-12, 12),
      y: p.y < 30 && isSide ? p.y : p.y + random.between(-12, 12),
    }))
    .map(turn);
  const backbone = (isSide ? points('20 6, 600 2, 2050 22') : points('700 -15, 705 300, 700 740')).map(turn);
  return {
    id: options.id,
    cut: (isSide ? 'side' : 'double shoulder') satisfies HideCut,
    outline: smoothCurve(outline),
    openings: isSide ? [smoothCurve(points('1500 700, 1530 690, 1545 715, 1520 735').map(turn))] : [],
    backbone,
    tightness: isSide ? [points('300 300, 900 280, 1500 300').map(turn)] : [],
    zones: isSide ? sideZones(turn) : [],
    flaws: Array.from({ length: options.flaws }, (_, i) => sampleFlaw(random, i, isSide, turn)),
    candidates: [],
    unsureEdges: [],
    leather: {
      tannage: 'veg tan',
      colour: 'natural',
      thickness: isSide ? { minMm: 3, maxMm: 3.5 } : { minMm: 1.8, maxMm: 2.2 },
      readings: [],
    },
    area: {},
    lot: 'spring',
    state: 'on hand',
  };
}

function sideZones(turn: (p: Point) => Point): Zone[] {
  const zone = (id: string, kind: Zone['kind'], text: string): Zone => ({
    id,
    kind,
    outline: smoothCurve(points(text).map(turn)),
  });
  return [
    zone('b', 'belly', '700 800, 1000 840, 1400 810, 1760 760, 1730 880, 1400 940, 1000 970, 730 930'),
    zone('n', 'neck', '10 300, 60 120, 240 80, 260 400, 240 640, 60 540'),
    zone('s', 'shank', '2060 480, 2170 480, 2225 680, 2140 740, 2050 620'),
  ];
}

function sampleFlaw(random: Random, i: number, isSide: boolean, turn: (p: Point) => Point): Flaw {
  const kind = FLAW_KINDS[i % FLAW_KINDS.length]!;
  const at = { x: random.between(150, isSide ? 1950 : 1250), y: random.between(60, isSide ? 780 : 620) };
  const side = i % 7 === 3 ? 'flesh' : 'grain';
  const id = `f${i + 1}`;
  if (kind === 'hole' || kind === 'bite') {
    return {
      id,
      kind,
      side: 'grain',
      shape: { kind: 'point', at: turn(at), radiusMm: random.between(4, 11) },
    };
  }
  if (kind === 'brand' || kind === 'stain' || kind === 'loose grain') {
    const r = random.between(28, 70);
    const corners = Array.from({ length: 7 }, (_, k) => {
      const a = (k * 2 * Math.PI) / 7;
      const reach = r * random.between(0.7, 1.2);
      return turn({ x: at.x + reach * Math.cos(a), y: at.y + reach * 0.7 * Math.sin(a) });
    });
    return { id, kind, side, shape: { kind: 'area', outline: smoothCurve(corners) } };
  }
  const line = [at];
  for (let k = 0; k < 3; k++) {
    const last = line[line.length - 1]!;
    line.push({ x: last.x + random.between(15, 60), y: last.y + random.between(-30, 30) });
  }
  return { id, kind, side, shape: { kind: 'line', line: line.map(turn), widthMm: random.between(3, 9) } };
}
