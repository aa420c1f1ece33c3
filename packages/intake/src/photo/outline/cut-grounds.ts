import { withMats } from '../vision/mats.js';
import type { Vision } from '../vision/vision.js';
import { COLOUR_NUMBERS } from './colour.js';
import { FEATURE_NUMBERS } from './features.js';
import type { GridSize } from './grid.js';
import { GROUND } from './known-ground.js';
import { withFewerNumbers } from './mixture.js';
import type { Mixture } from './mixture.js';

/** Bells that the cut takes for either ground; more have to be left out. */
export const CUT_BELLS = 5;
/** Numbers that the cut wants for each bell: weight, mean and covariances of three colours. */
const BELL_NUMBERS = 13;
/** The features' lightness and colours as bytes: twice as fine as they are, the middle at 128. */
const FINENESS = 2;

/**
 * Parts the picture into leather and floor at once: the border between them is drawn where it is shortest and runs along
 * steps of colour, while each side looks like its ground (a least cut of a graph; Boykov & Jolly 2001, Rother,
 * Kolmogorov & Blake 2004). Strokes hold without fail. 1 for each pixel of leather, under sheets and beyond the photos 0.
 */
export function cutGrounds(
  { width, height }: GridSize,
  features: Float32Array,
  ground: Uint8Array,
  { hide, floor }: { readonly hide: Mixture; readonly floor: Mixture },
  vision: Vision,
): Uint8Array {
  const count = width * height;
  const likelyFloor = heaviest(withFewerNumbers(floor, COLOUR_NUMBERS));
  return withMats((keep) => {
    const image = keep(new vision.Mat(height, width, vision.CV_8UC3));
    const mask = keep(new vision.Mat(height, width, vision.CV_8UC1));
    for (let i = 0; i < count; i++) {
      const kind = ground[i]!;
      const isSeen = kind !== GROUND.unseen && kind !== GROUND.paper;
      for (let n = 0; n < COLOUR_NUMBERS; n++)
        image.data[i * 3 + n] = toByte(isSeen ? features[i * FEATURE_NUMBERS + n]! : likelyFloor[n]!);
      mask.data[i] =
        kind === GROUND.hide
          ? vision.GC_FGD
          : kind === GROUND.floor || !isSeen
            ? vision.GC_BGD
            : vision.GC_PR_BGD;
    }
    const leather = modelOf(vision, hide);
    const rest = modelOf(vision, floor);
    keep(leather);
    keep(rest);
    const whole = new vision.Rect(0, 0, width, height);
    vision.grabCut(image, mask, whole, rest, leather, 1, vision.GC_EVAL_FREEZE_MODEL);
    return Uint8Array.from(mask.data, (label) =>
      label === vision.GC_FGD || label === vision.GC_PR_FGD ? 1 : 0,
    );
  });
}

function toByte(value: number): number {
  return Math.max(0, Math.min(255, Math.round(128 + FINENESS * value)));
}

function modelOf(vision: Vision, mixture: Mixture): InstanceType<Vision['Mat']> {
  const plain = withFewerNumbers(mixture, COLOUR_NUMBERS);
  const bells = Array.from({ length: plain.count }, (_, bell) => ({ bell, weight: weightOf(plain, bell) }))
    .sort((a, b) => b.weight - a.weight)
    .slice(0, CUT_BELLS);
  const total = bells.reduce((sum, { weight }) => sum + weight, 0);
  const model = new vision.Mat(1, BELL_NUMBERS * CUT_BELLS, vision.CV_64FC1);
  model.data64F.fill(0);
  bells.forEach(({ bell, weight }, k) => {
    model.data64F[k] = weight / total;
    for (let n = 0; n < COLOUR_NUMBERS; n++) {
      model.data64F[CUT_BELLS + k * 3 + n] = 128 + FINENESS * plain.means[bell * COLOUR_NUMBERS + n]!;
      model.data64F[CUT_BELLS * 4 + k * 9 + n * 4] =
        (FINENESS * FINENESS) / plain.tightness[bell * COLOUR_NUMBERS + n]!;
    }
  });
  return model;
}

/** A bell's share of all, from its height and spread. */
function weightOf({ logHeights, tightness, numbers }: Mixture, bell: number): number {
  let log = logHeights[bell]!;
  for (let n = 0; n < numbers; n++) log -= 0.5 * Math.log(tightness[bell * numbers + n]!);
  return Math.exp(log);
}

function heaviest(mixture: Mixture): Float64Array {
  let best = 0;
  for (let bell = 1; bell < mixture.count; bell++)
    if (weightOf(mixture, bell) > weightOf(mixture, best)) best = bell;
  return mixture.means.slice(best * COLOUR_NUMBERS, (best + 1) * COLOUR_NUMBERS);
}
