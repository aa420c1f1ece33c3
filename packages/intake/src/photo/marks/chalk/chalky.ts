import { globalIndex } from '../map/patches-of.js';
import { indicesOf } from '../map/thin.js';
import type { Grid } from '../map/grid.js';
import type { LeatherMap } from '../map/leather-map.js';
import type { Patch } from '../map/thin.js';
import { CHALK_COLOURS, isDirtColoured } from './chalk-share.js';
import type { ChalkShares } from './chalk-share.js';

/** What speaks for chalk in the cells of a stroke. */
export interface Chalkiness {
  /** How much of the leather it covers in the middle of the stroke, 0 to 1. */
  readonly cover: number;
  /** 1 if its colour goes as far towards the chalk's as its lightness does, 0 if it stays the leather's; absent: no telling. */
  readonly neutral?: number;
  /** How uneven the cover is, as a share of it, less what the grain makes uneven. */
  readonly uneven: number;
}

/** Where chalk and leather are of nearly one colour, only lightness tells. */
const LEAST_COLOUR = 9;

/** The stroke's edges are blurred: its better half is looked at. */
const MIDDLE_SHARE = 0.5;

export function chalkinessOf(map: LeatherMap, shares: ChalkShares, patch: Patch): Chalkiness {
  const cells = middleCells(map.grid, shares.share, patch);
  const sum = { share: 0, squares: 0, dl: 0, da: 0, db: 0, l: 0, a: 0, b: 0 };
  for (const i of cells) {
    const { lightness, a, b } = shares.ground;
    sum.share += shares.share[i]!;
    sum.squares += shares.share[i]! ** 2;
    sum.dl += map.lightness[i]! - lightness[i]!;
    sum.da += map.a[i]! - a[i]!;
    sum.db += map.b[i]! - b[i]!;
    sum.l += lightness[i]!;
    sum.a += a[i]!;
    sum.b += b[i]!;
  }
  const n = Math.max(1, cells.length);
  const cover = sum.share / n;
  const grainShare = shares.noise.lightness / Math.max(15, 92 - sum.l / n);
  const variance = Math.max(0, sum.squares / n - cover * cover - grainShare * grainShare);
  const neutral = neutralOf([sum.dl / n, sum.da / n, sum.db / n], [sum.l / n, sum.a / n, sum.b / n]);
  return {
    cover,
    uneven: Math.sqrt(variance) / Math.max(0.01, cover),
    ...(neutral === undefined ? {} : { neutral }),
  };
}

function middleCells(grid: Grid, share: Float32Array, patch: Patch): number[] {
  const cells = indicesOf(patch.cells).map((i) => {
    return globalIndex(patch, i, grid.width);
  });
  cells.sort((one, other) => share[other]! - share[one]!);
  return cells.slice(0, Math.max(1, Math.ceil(MIDDLE_SHARE * cells.length)));
}

type Triple = readonly [number, number, number];

/** Against the chalk that the stroke's colour points at best. */
function neutralOf([dl, da, db]: Triple, [l, a, b]: Triple): number | undefined {
  let leastOff = Infinity;
  let neutral: number | undefined;
  for (const [cl, ca, cb] of CHALK_COLOURS) {
    const [vl, va, vb] = [cl - l, ca - a, cb - b];
    if (isDirtColoured(vl, vb)) continue;
    const share = (dl * vl + da * va + db * vb) / (vl * vl + va * va + vb * vb);
    const off = Math.hypot(dl - share * vl, da - share * va, db - share * vb);
    if (off >= leastOff) continue;
    leastOff = off;
    const colour = va * va + vb * vb;
    neutral =
      colour < LEAST_COLOUR * LEAST_COLOUR || vl < LEAST_COLOUR
        ? undefined
        : (da * va + db * vb) / colour / Math.max(0.02, dl / vl);
  }
  return neutral;
}
