import type { View } from './unknowns.js';

/** Where a camera stands, told by how it sees the floor. */
export interface Standpoint extends View {
  /** Between the lens' axis and the plumb line, degrees. */
  readonly tiltDeg: number;
  /** In half diagonals. */
  readonly focal: number;
}

/** Focal lengths of phones in half diagonals: 26 mm on the 35 mm film's half diagonal of 21.6 mm is the usual one. */
const USUAL_FOCAL = 1.2;
/** Deviation of its logarithm: 20 mm to 35 mm are common, twofold lenses are not rare. */
const FOCAL_SPREAD = 0.3;
const LEAST_FOCAL = 0.6;
const MOST_FOCAL = 4;
const FOCAL_TRIES = 60;
/** How exactly the homography is known, as a share: its two conditions count against what is usual by this. */
const CONDITION_DEVIATION = 0.01;

/**
 * Standpoint from a homography (floor to photo, in half diagonals from the middle; eight numbers, the ninth 1): its first
 * columns are those of a rotation, so they must be square and equally long once divided by the focal length (Zhang 2000,
 * "A flexible new technique for camera calibration", section 2). A photo from straight above does not tell the focal length;
 * the usual one is taken then.
 */
export function standpointOf(h: ArrayLike<number>): Standpoint {
  let focal = USUAL_FOCAL;
  let least = Infinity;
  for (let i = 0; i <= FOCAL_TRIES; i++) {
    const tried = LEAST_FOCAL * (MOST_FOCAL / LEAST_FOCAL) ** (i / FOCAL_TRIES);
    const cost = focalCost(h, tried);
    if (cost < least) {
      least = cost;
      focal = tried;
    }
  }
  return standpointWith(h, focal);
}

function focalCost(h: ArrayLike<number>, focal: number): number {
  const [ax, ay, az] = [h[0]! / focal, h[3]! / focal, h[6]!];
  const [bx, by, bz] = [h[1]! / focal, h[4]! / focal, h[7]!];
  const aSq = ax * ax + ay * ay + az * az;
  const bSq = bx * bx + by * by + bz * bz;
  const square = (ax * bx + ay * by + az * bz) / Math.sqrt(aSq * bSq);
  const even = Math.log(aSq / bSq) / 2;
  return (
    (square * square + even * even) / CONDITION_DEVIATION ** 2 +
    (Math.log(focal / USUAL_FOCAL) / FOCAL_SPREAD) ** 2
  );
}

function standpointWith(h: ArrayLike<number>, focal: number): Standpoint {
  const a = [h[0]! / focal, h[3]! / focal, h[6]!] as const;
  const b = [h[1]! / focal, h[4]! / focal, h[7]!] as const;
  const t = [h[2]! / focal, h[5]! / focal, 1] as const;
  const scale = Math.sqrt(Math.hypot(...a) * Math.hypot(...b));
  const down = cross(a, b).map((value) => value / (scale * scale));
  const dot = (u: readonly number[], v: readonly number[]): number =>
    u[0]! * v[0]! + u[1]! * v[1]! + u[2]! * v[2]!;
  const length = Math.hypot(...down);
  return {
    footX: -dot(a, t) / dot(a, a),
    footY: -dot(b, t) / dot(b, b),
    height: Math.abs(dot(down, t)) / (length * scale),
    tiltDeg: (Math.acos(Math.min(1, Math.abs(down[2]!) / length)) * 180) / Math.PI,
    focal,
  };
}

function cross(a: readonly [number, number, number], b: readonly [number, number, number]): number[] {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}
