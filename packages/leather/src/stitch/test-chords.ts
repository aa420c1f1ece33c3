import type { Curve, Point } from '@hidebound/geometry';

/** A line as very many short chords, made here by the textbook's formulas and by nothing of the program. For tests. */
export interface FineChords {
  readonly points: readonly Point[];
  /** Along the chords up to each point, mm. */
  readonly alongMm: readonly number[];
  readonly lengthMm: number;
}

const CHORDS_A_SEGMENT = 4000;

export function fineChords({ start, segments }: Curve): FineChords {
  const points = [start];
  let from = start;
  for (const segment of segments) {
    for (let k = 1; k <= CHORDS_A_SEGMENT; k++) points.push(pointOf(from, segment, k / CHORDS_A_SEGMENT));
    from = segment.to;
  }
  const alongMm = [0];
  for (let i = 1; i < points.length; i++) {
    alongMm.push(
      alongMm[i - 1]! + Math.hypot(points[i]!.x - points[i - 1]!.x, points[i]!.y - points[i - 1]!.y),
    );
  }
  return { points, alongMm, lengthMm: alongMm[alongMm.length - 1]! };
}

function pointOf(a: Point, segment: Curve['segments'][number], t: number): Point {
  const b = segment.to;
  if (segment.kind === 'line') return { x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t };
  if (segment.kind === 'cubic') {
    const { handle1: p, handle2: q } = segment;
    const mix = (v: 'x' | 'y'): number =>
      (1 - t) ** 3 * a[v] + 3 * (1 - t) ** 2 * t * p[v] + 3 * (1 - t) * t ** 2 * q[v] + t ** 3 * b[v];
    return { x: mix('x'), y: mix('y') };
  }
  return pointOfArc(a, segment.via, b, t);
}

/** By the circumcentre of the three points. */
function pointOfArc(a: Point, via: Point, b: Point, t: number): Point {
  const d = 2 * (a.x * (via.y - b.y) + via.x * (b.y - a.y) + b.x * (a.y - via.y));
  if (Math.abs(d) < 1e-9) {
    // Straight, to the middle point and on from there.
    const first = Math.hypot(via.x - a.x, via.y - a.y);
    const whole = first + Math.hypot(b.x - via.x, b.y - via.y);
    if (whole === 0) return a;
    const s = t * whole;
    const [p, q, u] =
      s <= first ? [a, via, first === 0 ? 0 : s / first] : [via, b, (s - first) / (whole - first)];
    return { x: p.x + (q.x - p.x) * u, y: p.y + (q.y - p.y) * u };
  }
  const sq = (p: Point): number => p.x * p.x + p.y * p.y;
  const cx = (sq(a) * (via.y - b.y) + sq(via) * (b.y - a.y) + sq(b) * (a.y - via.y)) / d;
  const cy = (sq(a) * (b.x - via.x) + sq(via) * (a.x - b.x) + sq(b) * (via.x - a.x)) / d;
  const r = Math.hypot(a.x - cx, a.y - cy);
  const angle = (p: Point): number => Math.atan2(p.y - cy, p.x - cx);
  const turn = (from: number, to: number): number => (((to - from) % TURN) + TURN) % TURN;
  const start = angle(a);
  const forwards = turn(start, angle(b));
  const sweep = turn(start, angle(via)) <= forwards ? forwards : forwards - TURN;
  return { x: cx + r * Math.cos(start + sweep * t), y: cy + r * Math.sin(start + sweep * t) };
}

const TURN = 2 * Math.PI;

/** The point so many mm along the chords. */
export function placeOnChords({ points, alongMm, lengthMm }: FineChords, mm: number): Point {
  const along = Math.min(Math.max(mm, 0), lengthMm);
  const i = Math.max(
    1,
    alongMm.findIndex((each) => each >= along),
  );
  const [a, b] = [points[i - 1]!, points[i]!];
  const step = alongMm[i]! - alongMm[i - 1]!;
  const share = step === 0 ? 0 : (along - alongMm[i - 1]!) / step;
  return { x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share };
}
