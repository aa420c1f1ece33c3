import { studentChance } from './student.js';

/** The area that a purchase needs, as trials tell it: not one figure, for hides differ. */
export interface Need {
  /** What each trial needed, and what is held for likely beside them, mm². */
  readonly cases: readonly NeedCase[];
}

/** One need that may well come again, and how far from it the next one like it may be. */
export interface NeedCase {
  readonly middleMm2: number;
  readonly spreadMm2: number;
}

/** What is held for true of needs beside the trials, as shares of the need. */
export interface NeedBeliefs {
  /** What more work on a layout gains over a trial's first layout. */
  readonly gain: number;
  /** How far needs lie apart, as long as few trials tell it. */
  readonly usualSpread: number;
  /** How far real hides and layouts are from the trial ones, which no number of trials tells. */
  readonly unknown: number;
}

/**
 * The need after some trials: each trial's need may come again, less what a longer search gains, and blurred by what trials
 * can't tell (a kernel estimate of the distribution: Silverman, Density Estimation, 1986, section 2.4). Needs bunch: one
 * hide less or more, a large piece that finds its place or not; so no bell curve is laid over them. One more case, at
 * the mean and as wide as needs usually lie apart, stands for what few trials miss; without trials it is all there is.
 */
export function needAfter(trialsMm2: readonly number[], firstGuessMm2: number, beliefs: NeedBeliefs): Need {
  const { gain, usualSpread, unknown } = beliefs;
  const less = 1 - gain;
  const ofTrials = trialsMm2.map((needMm2): NeedCase => ({
    middleMm2: needMm2 * less,
    spreadMm2: needMm2 * less * unknown,
  }));
  const mean = trialsMm2.length === 0 ? firstGuessMm2 : meanOf(trialsMm2);
  const wide = Math.sqrt(usualSpread * usualSpread + unknown * unknown);
  return { cases: [...ofTrials, { middleMm2: mean * less, spreadMm2: mean * less * wide }] };
}

export function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** With so many degrees of freedom Student's distribution is the normal one to within 0.006, and needs no exponential. */
const NEARLY_NORMAL = 30;

/** The chance that so much area is enough. */
export function chanceOfEnough({ cases }: Need, areaMm2: number): number {
  return meanOf(
    cases.map(({ middleMm2, spreadMm2 }) => studentChance((areaMm2 - middleMm2) / spreadMm2, NEARLY_NORMAL)),
  );
}

const HALVINGS = 40;
/** No chance that is asked for lies so far beyond the largest need. */
const FARTHEST_SPREADS = 20;

/** The area that is enough with this chance, 0 < chance < 1. */
export function areaForChance(need: Need, chance: number): number {
  let low = 0;
  let high = Math.max(...need.cases.map((own) => own.middleMm2 + FARTHEST_SPREADS * own.spreadMm2));
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (chanceOfEnough(need, middle) < chance) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
