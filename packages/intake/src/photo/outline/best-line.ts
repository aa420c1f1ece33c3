/** Where an edge runs between the samples across it. */
export interface BestLine {
  /** For each point the first sample that is floor. */
  readonly splits: Int32Array;
  /** For each point how far the split could as well lie elsewhere, in samples (standard deviation). */
  readonly spreads: Float32Array;
}

/** What a step of one sample from one point to the next costs, in logarithms of odds. */
const STEP_COST = 2.5;
/** Neighbouring samples are blurred into each other, so that they say less than their number. */
const SAMPLES_PER_WORD = 2;
/** Points before and after the ring's start that are gone through again, so that it closes. */
const OVERLAP = 80;

/**
 * The line along the edge that parts leather from floor best: leather's gains before it and floor's after it, and as few
 * steps as may be (Viterbi's way through all splits). Splits keep within `most` samples of the middle.
 */
export function bestLine(gains: Float32Array, points: number, across: number, most: number): BestLine {
  const low = Math.max(1, ((across - 1) >> 1) - most);
  const high = Math.min(across - 1, ((across + 1) >> 1) + most);
  const scores = splitScores(gains, points, across, low, high);
  const wide = high - low + 1;
  const overlap = Math.min(points, OVERLAP);
  const length = points + 2 * overlap;
  const from = new Uint8Array(length * wide);
  let reached = new Float64Array(wide);
  for (let k = 0; k < length; k++) {
    const row = ((((k - overlap) % points) + points) % points) * wide;
    const next = new Float64Array(wide);
    spreadBest(reached, next, from.subarray(k * wide, (k + 1) * wide));
    for (let s = 0; s < wide; s++) next[s]! += scores[row + s]!;
    reached = next;
  }
  const splits = new Int32Array(points);
  let s = reached.indexOf(reached.reduce((a, b) => Math.max(a, b), -Infinity));
  for (let k = length - 1; k >= 0; k--) {
    if (k >= overlap && k < overlap + points) splits[k - overlap] = low + s;
    s = from[k * wide + s]!;
  }
  return { splits, spreads: splitSpreads(scores, points, wide, splits, low) };
}

/** How good each split is: gains of what is before it less gains of what is after it. */
function splitScores(
  gains: Float32Array,
  points: number,
  across: number,
  low: number,
  high: number,
): Float32Array {
  const wide = high - low + 1;
  const scores = new Float32Array(points * wide);
  for (let i = 0; i < points; i++) {
    let score = 0;
    for (let t = low; t <= high; t++) {
      scores[i * wide + t - low] = score / SAMPLES_PER_WORD;
      score += 2 * gains[i * across + t]!;
    }
  }
  return scores;
}

/** For each split the best of the last point's, less what the steps between cost; and which one that was. */
function spreadBest(reached: Float64Array, next: Float64Array, from: Uint8Array): void {
  const wide = reached.length;
  for (let s = 0; s < wide; s++) {
    next[s] = reached[s]!;
    from[s] = s;
  }
  for (let s = 1; s < wide; s++)
    if (next[s - 1]! - STEP_COST > next[s]!) {
      next[s] = next[s - 1]! - STEP_COST;
      from[s] = from[s - 1]!;
    }
  for (let s = wide - 2; s >= 0; s--)
    if (next[s + 1]! - STEP_COST > next[s]!) {
      next[s] = next[s + 1]! - STEP_COST;
      from[s] = from[s + 1]!;
    }
}

/** Mean square distance of all splits from the one taken, each counted by its odds. */
function splitSpreads(
  scores: Float32Array,
  points: number,
  wide: number,
  splits: Int32Array,
  low: number,
): Float32Array {
  const spreads = new Float32Array(points);
  for (let i = 0; i < points; i++) {
    const row = i * wide;
    let top = -Infinity;
    for (let s = 0; s < wide; s++) top = Math.max(top, scores[row + s]!);
    let weights = 0;
    let squares = 0;
    for (let s = 0; s < wide; s++) {
      const weight = Math.exp(scores[row + s]! - top);
      weights += weight;
      squares += weight * (s + low - splits[i]!) ** 2;
    }
    spreads[i] = Math.sqrt(squares / weights);
  }
  return spreads;
}
