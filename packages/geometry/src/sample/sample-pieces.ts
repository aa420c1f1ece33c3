import { createRandom } from '../number/random.js';
import type { Random } from '../number/random.js';
import type { Point, Region } from '../types/shape.js';
import { disc, roundedRectangle } from './sample-shapes.js';

/** The kinds of pieces that are drawn by chance. */
export type SampleKind = 'strap' | 'panel' | 'gusset' | 'bracket' | 'patch' | 'disc' | 'frame';

export interface SamplePiece {
  readonly kind: SampleKind;
  readonly region: Region;
}

const KINDS: readonly SampleKind[] = [
  'strap',
  'panel',
  'gusset',
  'bracket',
  'patch',
  'disc',
  'frame',
  'panel',
];

/** So many different pieces, lengths from about 40 to 600 mm times the scale; the same for the same seed. */
export function samplePieces(seed: number, count: number, scale = 1): SamplePiece[] {
  const random = createRandom(seed);
  return Array.from({ length: count }, () => {
    const kind = KINDS[random.integer(KINDS.length)]!;
    return { kind, region: drawPiece(random, kind, scale) };
  });
}

function drawPiece(random: Random, kind: SampleKind, scale: number): Region {
  const size = (from: number, to: number): number => scale * random.between(from, to);
  switch (kind) {
    case 'strap': {
      const width = size(18, 45);
      return solid(roundedRectangle(size(200, 600), width, random.next() < 0.5 ? width / 2 : 0));
    }
    case 'panel':
      return solid(roundedRectangle(size(120, 320), size(90, 220), size(0, 40)));
    case 'gusset':
      return solid(trapezoid(size(100, 240), size(40, 90), size(60, 180)));
    case 'bracket':
      return solid(bracket(size(110, 220), size(90, 180), random.between(0.3, 0.5)));
    case 'patch':
      return solid(roundedRectangle(size(40, 90), size(30, 70), size(4, 14)));
    case 'disc':
      return solid(disc({ x: 0, y: 0 }, size(15, 50), 32));
    case 'frame': {
      const length = size(130, 260);
      const width = size(110, 200);
      const inner = roundedRectangle(length * 0.6, width * 0.55, 10 * scale);
      return { outer: roundedRectangle(length, width, 12 * scale), openings: [inner.reverse()] };
    }
  }
}

function solid(outer: Point[]): Region {
  return { outer, openings: [] };
}

function trapezoid(bottom: number, top: number, height: number): Point[] {
  return round([
    [-top / 2, -height / 2],
    [top / 2, -height / 2],
    [bottom / 2, height / 2],
    [-bottom / 2, height / 2],
  ]);
}

/** U-shaped, open upwards. */
function bracket(length: number, height: number, share: number): Point[] {
  const arm = (length * (1 - share)) / 2;
  const floor = height * 0.35;
  const [x, y] = [length / 2, height / 2];
  return round([
    [-x, -y],
    [-x + arm, -y],
    [-x + arm, y - floor],
    [x - arm, y - floor],
    [x - arm, -y],
    [x, -y],
    [x, y],
    [-x, y],
  ]);
}

function round(corners: readonly (readonly [number, number])[]): Point[] {
  return corners.map(([x, y]) => ({
    x: Math.round(x * 1000) / 1000 + 0,
    y: Math.round(y * 1000) / 1000 + 0,
  }));
}
