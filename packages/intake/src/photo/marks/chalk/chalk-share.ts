import { deviationFrom } from '../map/noise.js';
import { groundOf } from '../map/even-out.js';
import type { LeatherMap } from '../map/leather-map.js';
import type { Vision } from '../../vision/vision.js';

/** How a cell departs from the leather around it, and how much chalk would make it so. */
export interface ChalkShares {
  /** 0 for bare leather, 1 for nothing but chalk; 0 too where the colour is not on the way from leather to a chalk. */
  readonly share: Float32Array;
  readonly ground: { readonly lightness: Float32Array; readonly a: Float32Array; readonly b: Float32Array };
  /** Deviation of the leather's own lightness and colour. */
  readonly noise: { readonly lightness: number; readonly colour: number };
}

/** L*, a*, b* of chalks as photos show them; in between lie the others. From memory, of tailor's chalk and silver pens. */
export const CHALK_COLOURS: readonly (readonly [number, number, number])[] = [
  [92, 0, 2],
  [90, -3, 32],
  [82, -6, -16],
  [76, 0, 0],
];

/** The ground is drawn from so many mm around: wider than any chalk line, narrower than shadows. */
const GROUND_SIGMA_MM = 30;

/** No photo is evener than this, in L*a*b*. */
const LEAST_NOISE = 0.5;

/** A cell that departs by less than so many deviations is leather. */
const LEAST_DEVIATIONS = 2.5;

/** How far off the way from leather to chalk a colour may lie, as a share of how far it departs. */
const OFF_THE_WAY = 0.45;

/** A chalk that is no farther than this from the leather, in L*a*b*, can't be told from it. */
const LEAST_CONTRAST = 14;

export function chalkShares(map: LeatherMap, vision: Vision): ChalkShares {
  const { grid, mask } = map;
  const size = { width: grid.width, height: grid.height };
  const sigma = GROUND_SIGMA_MM / grid.stepX;
  const ground = {
    lightness: groundOf({ ...size, values: map.lightness }, mask, sigma, vision).values,
    a: groundOf({ ...size, values: map.a }, mask, sigma, vision).values,
    b: groundOf({ ...size, values: map.b }, mask, sigma, vision).values,
  };
  const off = (name: 'lightness' | 'a' | 'b'): number => deviationFrom(map[name], ground[name], mask);
  const noise = {
    lightness: Math.max(LEAST_NOISE, off('lightness')),
    colour: Math.max(LEAST_NOISE, off('a'), off('b')),
  };
  const share = new Float32Array(mask.length);
  for (let i = 0; i < mask.length; i++) if (mask[i] !== 0) share[i] = shareOf(map, ground, noise, i);
  return { share, ground, noise };
}

/** A chalk that is darker than the leather looks like dirt on it, unless it is far bluer. */
export function isDirtColoured(darkerIfBelow0: number, bluerIfBelow0: number): boolean {
  return darkerIfBelow0 < 3 && bluerIfBelow0 > LEAST_BLUER;
}

const LEAST_BLUER = -18;

function shareOf(
  map: LeatherMap,
  ground: ChalkShares['ground'],
  noise: ChalkShares['noise'],
  i: number,
): number {
  const dl = map.lightness[i]! - ground.lightness[i]!;
  const da = map.a[i]! - ground.a[i]!;
  const db = map.b[i]! - ground.b[i]!;
  const least = LEAST_DEVIATIONS * noise.lightness;
  const departs = dl * dl + da * da + db * db;
  if (departs < least * least) return 0;
  let best = 0;
  for (const [l, a, b] of CHALK_COLOURS) {
    const vl = l - ground.lightness[i]!;
    const va = a - ground.a[i]!;
    const vb = b - ground.b[i]!;
    const contrast = vl * vl + va * va + vb * vb;
    if (contrast < LEAST_CONTRAST * LEAST_CONTRAST || isDirtColoured(vl, vb)) continue;
    const along = dl * vl + da * va + db * vb;
    if (along <= 0) continue;
    const offSq = departs - (along * along) / contrast;
    if (offSq > OFF_THE_WAY * OFF_THE_WAY * departs + 4 * noise.colour * noise.colour) continue;
    best = Math.max(best, along / contrast);
  }
  return Math.min(1, best);
}
