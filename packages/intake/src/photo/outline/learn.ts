import { createRandom } from '@hidebound/geometry';
import { KINSHIPS, bellOdds } from './bell-kinship.js';
import { FEATURE_NUMBERS, LEAST_SPREAD, featuresOf } from './features.js';
import { fillPapers } from './fill-papers.js';
import { distanceToMarked } from './grid.js';
import { GROUND } from './known-ground.js';
import type { Level } from './level.js';
import { likelyPlace } from './likely-place.js';
import { EVEN_LIGHT, fitLight } from './light.js';
import type { Light, LightSample } from './light.js';
import { bestBell, fitMixture, logDensity } from './mixture.js';
import type { Mixture } from './mixture.js';
import type { Vision } from '../vision/vision.js';
import { cutGrounds } from './cut-grounds.js';
import { linksBetween, smoothLabels } from './smooth-labels.js';

/** What leather and floor look like in this picture, and where either lies, roughly. */
export interface Learned {
  readonly hide: Mixture;
  readonly floor: Mixture;
  readonly light: Light;
  /** Logarithms of the odds of leather for every pixel of the level. */
  readonly odds: Float32Array;
  /** Whether a person's strokes have a say in the odds, so that they count for more than the colour of single places. */
  readonly byStrokes: boolean;
}

/** Bells for the whole picture at first, then for either ground by itself. */
const FIRST_BELLS = 14;
const BELLS = 6;
/** Pixels that a mixture is fitted to; more change its bells by less than their spread. */
const SAMPLES = 4000;
/** Rounds after the first in which grounds are learned anew from the last labels, under light that is better known. */
const ROUNDS = 2;
/** No pixel's colour alone says more than this (logarithm of odds): a chalk line is far from either ground's colours. */
const MOST_SAID = 4;
/** What a stroke says. */
const STROKE_SAYS = 12;
const SMOOTHING = { pull: 1.2, rounds: 10 };
/** Neighbours whose colours differ by more than this (units of colour.ts) are parted by an edge. */
const EDGE = 12;
/** Within one ground, colours pass into each other by less than this from pixel to pixel. */
const SOFT_EDGE = 5;
/** What the place of a pixel says beside its colour. */
const PLACE_SHARE = 0.3;

/** Learns leather and floor from the picture itself; nothing if both can't be told apart at all. */
export function learnGrounds(level: Level, ground: Uint8Array, vision: Vision): Learned | undefined {
  const likely = likelyPlace(level, ground);
  const unsaid = ground.map((kind) => (kind === GROUND.hide || kind === GROUND.floor ? GROUND.open : kind));
  const alone = learnAlone(level, unsaid, likely);
  const kinds = [GROUND.hide, GROUND.floor].filter((kind) => ground.includes(kind)).length;
  // Strokes of one kind that only confirm what was found say too little of the other kind to learn anew from them.
  if (kinds === 0 || (kinds === 1 && alone !== undefined && agrees(ground, alone.odds))) return alone;
  return learnByStrokes(level, ground, likely, alone?.odds, vision);
}

function learnAlone(level: Level, ground: Uint8Array, likely: Float32Array): Learned | undefined {
  let light = EVEN_LIGHT;
  let features = featuresOf(level, light);
  let odds = firstOdds(level, ground, features, likely);
  for (let round = 0; ; round++) {
    const mixtures = fitGrounds(level, ground, features, odds);
    if (mixtures === undefined) return undefined;
    odds = groundOdds(level, ground, features, likely, mixtures);
    if (round === ROUNDS) {
      if (!areDistinct(level, ground, features, odds, mixtures)) return undefined;
      fillPapers(level, ground, odds);
      return { ...mixtures, light, odds, byStrokes: false };
    }
    light = addLight(light, lightLeft(level, ground, features, odds, mixtures.floor));
    features = featuresOf(level, light);
  }
}

/**
 * Where a person says what is leather, either ground is first learned from the strokes alone, then from where the picture
 * is best cut into two. Edges count here beside colours, for strokes are drawn where colours alone have failed.
 */
function learnByStrokes(
  level: Level,
  ground: Uint8Array,
  likely: Float32Array,
  alone: Float32Array | undefined,
  vision: Vision,
): Learned | undefined {
  let light = EVEN_LIGHT;
  let odds = strokeOdds(ground, likely, alone);
  for (let round = 0; ; round++) {
    const features = featuresOf(level, light);
    const mixtures =
      round === 0
        ? fitBoth(
            features,
            pick(ground.length, (i) => odds[i]! > 0),
            pick(ground.length, (i) => odds[i]! < 0),
          )
        : fitGrounds(level, ground, features, odds);
    if (mixtures === undefined) return undefined;
    const cut = cutGrounds(level, features, ground, mixtures, vision);
    odds = Float32Array.from(cut, (is) => (is === 1 ? CUT_SAYS : -CUT_SAYS));
    if (round === CUT_ROUNDS) {
      fillPapers(level, ground, odds);
      return { ...mixtures, light, odds, byStrokes: true };
    }
    light = addLight(light, lightLeft(level, ground, features, odds, mixtures.floor));
  }
}

/** Rounds after the first in which the picture is cut anew, by what the last cut says of either ground. */
const CUT_ROUNDS = 4;
/** What the cut says of each pixel (logarithm of odds). */
const CUT_SAYS = 6;

/**
 * Strokes, and on either side what hardly needs any: what passed for leather without strokes and lies in the middle; and
 * where no stroke tells of the floor, what lies around sheets and along the border. 0 for the rest.
 */
function strokeOdds(ground: Uint8Array, likely: Float32Array, alone: Float32Array | undefined): Float32Array {
  const isFloorSaid = ground.includes(GROUND.floor);
  return Float32Array.from(ground, (kind, i) => {
    if (kind === GROUND.hide) return STROKE_SAYS;
    if (kind === GROUND.floor) return -STROKE_SAYS;
    if (kind !== GROUND.open) return 0;
    if (!isFloorSaid && likely[i]! < LIKELY_FLOOR) return -STROKE_SAYS;
    return alone !== undefined && alone[i]! > 0 && likely[i]! > LIKELY_HIDE ? STROKE_SAYS : 0;
  });
}

/** Whether nearly all that strokes say was found without them. */
function agrees(ground: Uint8Array, odds: Float32Array): boolean {
  let said = 0;
  let same = 0;
  for (let i = 0; i < ground.length; i++) {
    if (ground[i] !== GROUND.hide && ground[i] !== GROUND.floor) continue;
    said += 1;
    if (odds[i]! > 0 === (ground[i] === GROUND.hide)) same += 1;
  }
  return same >= AGREEING * said;
}

const AGREEING = 0.97;

/** How likely leather is at a place that stands for floor, and at one that stands for leather. */
const LIKELY_FLOOR = 0.2;
const LIKELY_HIDE = 0.7;

/**
 * The first guess: the whole picture's colours fall into bells, and each bell is the more leather, the more of it lies
 * where leather is to be expected and beside other leather. So a bell of leather that runs out over the border still is
 * leather, and a plank in the middle still is floor.
 */
function firstOdds(
  level: Level,
  ground: Uint8Array,
  features: Float32Array,
  likely: Float32Array,
): Float32Array {
  const open = Float32Array.from(ground, (kind) => (kind === GROUND.unseen || kind === GROUND.paper ? 0 : 1));
  const picked = pick(ground.length, (i) => open[i]! > 0);
  const mixture = fitMixture(gather(features, picked), FEATURE_NUMBERS, FIRST_BELLS, LEAST_SPREAD);
  const bells = Int32Array.from(open, (is, i) =>
    is > 0 ? bestBell(mixture, features, i * FEATURE_NUMBERS) : -1,
  );
  const prior = likely.map((p, i) =>
    ground[i] === GROUND.hide ? STROKE_SAYS : ground[i] === GROUND.floor ? -STROKE_SAYS : logOdds(p),
  );
  const soft = linksBetween(level, features, FEATURE_NUMBERS, SOFT_EDGE);
  const links = linksBetween(level, features, FEATURE_NUMBERS, EDGE);
  let odds: Float32Array = prior;
  for (const kinship of KINSHIPS) {
    const ofBells = bellOdds(level, bells, mixture.count, prior, soft, kinship);
    const said = prior.map(
      (log, i) => PLACE_SHARE * log + (bells[i]! < 0 ? 0 : limited(ofBells[bells[i]!]!, MOST_SAID)),
    );
    odds = smoothLabels(level, said, links, SMOOTHING);
    const share = shareOfHide(odds, open);
    if (share > LEAST_HIDE && share < MOST_HIDE) break;
  }
  return odds;
}

/** A photo is taken of a hide: it fills this much of what is seen. */
const LEAST_HIDE = 0.03;
const MOST_HIDE = 0.85;

function shareOfHide(odds: Float32Array, open: Float32Array): number {
  let hide = 0;
  let all = 0;
  for (let i = 0; i < odds.length; i++) {
    if (open[i] === 0) continue;
    all += 1;
    if (odds[i]! > 0) hide += 1;
  }
  return all === 0 ? 0 : hide / all;
}

function limited(value: number, most: number): number {
  return Math.max(-most, Math.min(most, value));
}

/** Fits either ground to the pixels that are surely of it: told by strokes, or well within their side. */
function fitGrounds(
  level: Level,
  ground: Uint8Array,
  features: Float32Array,
  odds: Float32Array,
): { readonly hide: Mixture; readonly floor: Mixture } | undefined {
  const isOpen = (i: number): boolean => ground[i] !== GROUND.unseen && ground[i] !== GROUND.paper;
  const isHide = (i: number): boolean =>
    ground[i] === GROUND.hide || (ground[i] !== GROUND.floor && odds[i]! > 0);
  const depthInHide = distanceToMarked(level, (i) => !isHide(i), true);
  const depthInFloor = distanceToMarked(level, (i) => isHide(i), false);
  const hide = pick(ground.length, (i) => isOpen(i) && (depthInHide[i]! > 1.5 || ground[i] === GROUND.hide));
  const floor = pick(
    ground.length,
    (i) => isOpen(i) && (depthInFloor[i]! > 1.5 || ground[i] === GROUND.floor),
  );
  return fitBoth(features, hide, floor);
}

function fitBoth(
  features: Float32Array,
  hide: readonly number[],
  floor: readonly number[],
): { readonly hide: Mixture; readonly floor: Mixture } | undefined {
  if (hide.length < BELLS || floor.length < BELLS) return undefined;
  return {
    hide: fitMixture(gather(features, hide), FEATURE_NUMBERS, BELLS, LEAST_SPREAD),
    floor: fitMixture(gather(features, floor), FEATURE_NUMBERS, BELLS, LEAST_SPREAD),
  };
}

/**
 * The light that is still in the floor's features: what its pixels have beside their best bells. Leather shines and is
 * darker towards belly and legs of its own, so that it says nothing of the light; the floor lies all around it.
 */
function lightLeft(
  level: Level,
  ground: Uint8Array,
  features: Float32Array,
  odds: Float32Array,
  floor: Mixture,
): Light {
  const samples: LightSample[] = [];
  for (const i of pick(
    ground.length,
    (i) => odds[i]! < -1 && ground[i] !== GROUND.unseen && ground[i] !== GROUND.paper,
  ))
    samples.push({
      x: (i % level.width) / level.width,
      y: Math.floor(i / level.width) / level.height,
      off: features[i * FEATURE_NUMBERS]!,
      group: bestBell(floor, features, i * FEATURE_NUMBERS),
    });
  return samples.length < LEAST_FOR_LIGHT ? EVEN_LIGHT : fitLight(samples, floor.count);
}

/** Less floor than this says nothing of how the light falls. */
const LEAST_FOR_LIGHT = 500;

/** Leather differs from floor by so much (logarithm of odds, on the mean over its pixels); two halves of one floor do not. */
const DISTINCT = 1.5;

function areDistinct(
  level: Level,
  ground: Uint8Array,
  features: Float32Array,
  odds: Float32Array,
  { hide, floor }: { readonly hide: Mixture; readonly floor: Mixture },
): boolean {
  const leather = pick(level.width * level.height, (i) => odds[i]! > 0 && ground[i] !== GROUND.paper);
  const said = leather.reduce((sum, i) => {
    const at = i * FEATURE_NUMBERS;
    return sum + limited(logDensity(hide, features, at) - logDensity(floor, features, at), MOST_SAID);
  }, 0);
  return leather.length > 0 && said / leather.length > DISTINCT;
}

function addLight(a: Light, b: Light): Light {
  return a.map((term, i) => term + b[i]!);
}

function groundOdds(
  level: Level,
  ground: Uint8Array,
  features: Float32Array,
  likely: Float32Array,
  { hide, floor }: { readonly hide: Mixture; readonly floor: Mixture },
): Float32Array {
  // Under a sheet and beyond the photos only the neighbours have a say.
  const odds = new Float32Array(ground.length);
  for (let i = 0; i < odds.length; i++) {
    const kind = ground[i]!;
    if (kind === GROUND.hide) odds[i] = STROKE_SAYS;
    else if (kind === GROUND.floor) odds[i] = -STROKE_SAYS;
    else if (kind === GROUND.open) {
      const at = i * FEATURE_NUMBERS;
      const said = logDensity(hide, features, at) - logDensity(floor, features, at);
      odds[i] = limited(said, MOST_SAID) + PLACE_SHARE * logOdds(likely[i]!);
    }
  }
  const smooth = smoothLabels(level, odds, linksBetween(level, features, FEATURE_NUMBERS, EDGE), SMOOTHING);
  for (let i = 0; i < smooth.length; i++) if (ground[i] === GROUND.unseen) smooth[i] = -STROKE_SAYS;
  return smooth;
}

/** At most SAMPLES pixels of those that count, drawn by chance that is the same each time. */
function pick(count: number, counts: (pixel: number) => boolean): number[] {
  const all: number[] = [];
  for (let i = 0; i < count; i++) if (counts(i)) all.push(i);
  if (all.length <= SAMPLES) return all;
  const random = createRandom(7);
  return Array.from({ length: SAMPLES }, () => all[random.integer(all.length)]!);
}

function gather(features: Float32Array, pixels: readonly number[]): Float32Array {
  const samples = new Float32Array(pixels.length * FEATURE_NUMBERS);
  pixels.forEach((pixel, i) =>
    samples.set(
      features.subarray(pixel * FEATURE_NUMBERS, (pixel + 1) * FEATURE_NUMBERS),
      i * FEATURE_NUMBERS,
    ),
  );
  return samples;
}

function logOdds(p: number): number {
  const safe = Math.max(1e-4, Math.min(1 - 1e-4, p));
  return Math.log(safe / (1 - safe));
}
