import { createRandom } from '@hidebound/geometry';

/** A density made of bells along the axes: what colours something has. */
export interface Mixture {
  readonly numbers: number;
  readonly count: number;
  readonly means: Float64Array;
  /** One over the variance, for each bell and number. */
  readonly tightness: Float64Array;
  /** Logarithm of a bell's weight times its height. */
  readonly logHeights: Float64Array;
}

/** Rounds of fitting; the last few move bells by less than the noise of a photo. */
const ROUNDS = 10;

/**
 * Fits bells to samples of so many numbers each, by expectation and maximisation from spread-out starts. `leastSpread`
 * keeps the standard deviation of each number from getting smaller than what light and noise do to any colour.
 */
export function fitMixture(
  samples: Float32Array,
  numbers: number,
  count: number,
  leastSpread: readonly number[],
): Mixture {
  const amount = samples.length / numbers;
  const means = startingMeans(samples, numbers, Math.min(count, amount), leastSpread);
  const bells = means.length / numbers;
  const spreads = new Float64Array(bells * numbers);
  for (let i = 0; i < spreads.length; i++) spreads[i] = (3 * leastSpread[i % numbers]!) ** 2;
  const weights = new Float64Array(bells).fill(1 / bells);
  let mixture = assemble(numbers, means, spreads, weights);
  const shares = new Float64Array(bells);
  for (let round = 0; round < ROUNDS; round++) {
    const sums = new Float64Array(bells * (1 + 2 * numbers));
    for (let i = 0; i < amount; i++) {
      bellShares(mixture, samples, i * numbers, shares);
      addSample(sums, shares, samples, i * numbers, numbers);
    }
    readSums(sums, numbers, { means, spreads, weights }, amount, leastSpread);
    mixture = assemble(numbers, means, spreads, weights);
  }
  return mixture;
}

/** Logarithm of the density; with fewer `numbers` than the mixture has, the rest is left out of account. */
export function logDensity(
  { count, numbers: all, means, tightness, logHeights }: Mixture,
  values: Float32Array,
  offset: number,
): number {
  let best = -Infinity;
  let sum = 0;
  for (let bell = 0; bell < count; bell++) {
    let log = logHeights[bell]!;
    for (let n = 0; n < all; n++) {
      const away = values[offset + n]! - means[bell * all + n]!;
      log -= 0.5 * away * away * tightness[bell * all + n]!;
    }
    if (log > best) {
      sum = sum * Math.exp(best - log) + 1;
      best = log;
    } else sum += Math.exp(log - best);
  }
  return best + Math.log(sum);
}

/** The bell that explains the values best. */
export function bestBell(
  { count, numbers, means, tightness, logHeights }: Mixture,
  values: Float32Array,
  offset: number,
): number {
  let best = 0;
  let bestLog = -Infinity;
  for (let bell = 0; bell < count; bell++) {
    let log = logHeights[bell]!;
    for (let n = 0; n < numbers; n++) {
      const away = values[offset + n]! - means[bell * numbers + n]!;
      log -= 0.5 * away * away * tightness[bell * numbers + n]!;
    }
    if (log > bestLog) {
      best = bell;
      bestLog = log;
    }
  }
  return best;
}

/** The same density with the last numbers left out of account. */
export function withFewerNumbers(mixture: Mixture, numbers: number): Mixture {
  const { count, numbers: all } = mixture;
  const pick = (from: Float64Array): Float64Array =>
    Float64Array.from({ length: count * numbers }, (_, i) => {
      const bell = Math.floor(i / numbers);
      return from[bell * all + (i % numbers)]!;
    });
  const logHeights = mixture.logHeights.map((log, bell) => {
    let plain = log;
    for (let n = numbers; n < all; n++) plain -= 0.5 * Math.log(mixture.tightness[bell * all + n]!);
    return plain;
  });
  return { numbers, count, means: pick(mixture.means), tightness: pick(mixture.tightness), logHeights };
}

function assemble(
  numbers: number,
  means: Float64Array,
  spreads: Float64Array,
  weights: Float64Array,
): Mixture {
  const count = weights.length;
  const logHeights = new Float64Array(count);
  for (let bell = 0; bell < count; bell++) {
    let log = Math.log(Math.max(weights[bell]!, 1e-9));
    for (let n = 0; n < numbers; n++) log -= 0.5 * Math.log(spreads[bell * numbers + n]!);
    logHeights[bell] = log;
  }
  return { numbers, count, means: means.slice(), tightness: spreads.map((spread) => 1 / spread), logHeights };
}

function bellShares(mixture: Mixture, samples: Float32Array, offset: number, shares: Float64Array): void {
  const { count, numbers, means, tightness, logHeights } = mixture;
  let best = -Infinity;
  for (let bell = 0; bell < count; bell++) {
    let log = logHeights[bell]!;
    for (let n = 0; n < numbers; n++) {
      const away = samples[offset + n]! - means[bell * numbers + n]!;
      log -= 0.5 * away * away * tightness[bell * numbers + n]!;
    }
    shares[bell] = log;
    if (log > best) best = log;
  }
  let sum = 0;
  for (let bell = 0; bell < count; bell++) sum += shares[bell] = Math.exp(shares[bell]! - best);
  for (let bell = 0; bell < count; bell++) shares[bell]! /= sum;
}

function addSample(
  sums: Float64Array,
  shares: Float64Array,
  samples: Float32Array,
  offset: number,
  numbers: number,
): void {
  const stride = 1 + 2 * numbers;
  for (let bell = 0; bell < shares.length; bell++) {
    const share = shares[bell]!;
    sums[bell * stride]! += share;
    for (let n = 0; n < numbers; n++) {
      const value = samples[offset + n]!;
      sums[bell * stride + 1 + n]! += share * value;
      sums[bell * stride + 1 + numbers + n]! += share * value * value;
    }
  }
}

function readSums(
  sums: Float64Array,
  numbers: number,
  to: { means: Float64Array; spreads: Float64Array; weights: Float64Array },
  amount: number,
  leastSpread: readonly number[],
): void {
  const stride = 1 + 2 * numbers;
  for (let bell = 0; bell < to.weights.length; bell++) {
    const total = sums[bell * stride]!;
    to.weights[bell] = total / amount;
    if (total < 1) continue;
    for (let n = 0; n < numbers; n++) {
      const mean = sums[bell * stride + 1 + n]! / total;
      const spread = sums[bell * stride + 1 + numbers + n]! / total - mean * mean;
      to.means[bell * numbers + n] = mean;
      to.spreads[bell * numbers + n] = Math.max(spread, leastSpread[n]! ** 2);
    }
  }
}

/** Samples far from each other, each drawn by its squared distance from those before (Arthur & Vassilvitskii 2007). */
function startingMeans(
  samples: Float32Array,
  numbers: number,
  count: number,
  leastSpread: readonly number[],
): Float64Array {
  const random = createRandom(1);
  const amount = samples.length / numbers;
  const means = new Float64Array(count * numbers);
  const nearest = new Float64Array(amount).fill(Infinity);
  let chosen = random.integer(Math.max(1, amount));
  for (let bell = 0; bell < count; bell++) {
    for (let n = 0; n < numbers; n++) means[bell * numbers + n] = samples[chosen * numbers + n]!;
    let total = 0;
    for (let i = 0; i < amount; i++) {
      let away = 0;
      for (let n = 0; n < numbers; n++)
        away += ((samples[i * numbers + n]! - means[bell * numbers + n]!) / leastSpread[n]!) ** 2;
      if (away < nearest[i]!) nearest[i] = away;
      total += nearest[i]!;
    }
    let draw = random.next() * total;
    for (chosen = 0; chosen + 1 < amount; chosen++) {
      draw -= nearest[chosen]!;
      if (draw <= 0) break;
    }
  }
  return means;
}
