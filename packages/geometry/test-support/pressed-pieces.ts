/** Invented pieces as rough as real ones, and a dividing line that clings to them: borders that all but coincide. */
import { offsetRegions } from '../src/shape/clipper.js';
import { orientRing } from '../src/shape/ring.js';
import { simplifyGrowing } from '../src/shape/simplify.js';
import type { Region, Ring } from '../src/types/shape.js';
import { solid } from './shapes.js';

const PITCH_MM = 110;
const RADIUS_MM = 45;
/** Wide enough to bridge every gap between neighbours. */
const BRIDGE_MM = 75;
/** How far the hull may stand off a piece between the places where it touches. */
const COARSE_MM = 1;

export interface PressedPieces {
  readonly pieces: readonly Region[];
  /** Coarser pieces grown until they meet and shrunk back: touches the pieces' borders, or almost, in many places. */
  readonly hull: readonly Region[];
}

/** `rows` times `rows` three-lobed pieces of `corners` corners each, each row and column turned a little further. */
export function pressedPieces(rows: number, corners: number): PressedPieces {
  const pieces: Region[] = [];
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < rows; column++) {
      pieces.push(solid(lobed(row * PITCH_MM, column * PITCH_MM, corners, row * column)));
    }
  }
  const mitred = { join: 'mitre' } as const;
  const coarse = pieces.map(({ outer }) => solid(simplifyGrowing(outer, COARSE_MM)));
  const hull = offsetRegions(offsetRegions(coarse, BRIDGE_MM, mitred), -BRIDGE_MM, mitred);
  return { pieces, hull };
}

function lobed(x: number, y: number, corners: number, turn: number): Ring {
  const ring = Array.from({ length: corners }, (_, i) => {
    const angle = (2 * Math.PI * i) / corners;
    const radius = RADIUS_MM * (1 + 0.25 * Math.sin(3 * angle + turn));
    return {
      x: Math.round((x + radius * Math.cos(angle)) * 1000) / 1000,
      y: Math.round((y + radius * Math.sin(angle)) * 1000) / 1000,
    };
  });
  return orientRing(ring, 'outer');
}
