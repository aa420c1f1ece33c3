import type { Preparation } from '../model/order.js';
import type { Span } from '../model/workshop-rules.js';
import type { Workshop } from '../model/workshop.js';
import { figureOf } from '../workshop/figures.js';
import { conditioningOf, dyeBaseOf, dyeCoverage, finishKindOf } from './kinds.js';
import { dyeCoats, feedingOf, finishCoats } from './recipe.js';
import type { LeatherState } from './recipe.js';

/** What is done to the leather before the dye, where that is more than wiping. */
export type Worked = 'tooled' | 'moulded' | 'tooled and moulded';

export type StepKind =
  | 'look over'
  | 'test'
  | 'rough cut'
  | 'take out'
  | 'wipe'
  | 'condition'
  | 'case'
  | 'work'
  | 'dye'
  | 'rub off'
  | 'condition again'
  | 'resist'
  | 'finish'
  | 'buff'
  | 'cut'
  | 'trim'
  | 'edges';

/** One step of a preparation, for all of its blocks. */
export interface WorkStep {
  readonly kind: StepKind;
  /** Where a step is done in several coats: which one, of how many. */
  readonly coat?: number;
  readonly of?: number;
  readonly product?: string;
  /** Once for the whole preparation, or once for each block. */
  readonly once: boolean;
  /** Minutes of hands: for the preparation or block, for a square metre of side, for a piece. */
  readonly hands: HandsOfStep;
  /** Hours that it lies until the next step. */
  readonly waitH: Span;
  /** Where the waiting comes from. */
  readonly waitSource?: string;
}

export interface HandsOfStep {
  readonly each: Span;
  readonly perM2: Span;
  readonly perPiece: Span;
}

export interface WorkInput {
  readonly preparation: Preparation;
  readonly workshop: Workshop;
  readonly worked?: Worked;
  /** Prepared as a whole hide, not in blocks that are cut out first. */
  readonly isWhole: boolean;
  /** What lies on the whole hide of other leathers is cut out first. */
  readonly takesOut?: boolean;
  /** Leather that is full of oil from the tannery is not fed. */
  readonly isFullOfOil?: boolean;
}

/**
 * The order of work: look over, test on a scrap of the same leather, rough cut, wipe or feed and rest, dye in thin
 * coats, rub off, feed lightly and rest, resist, finish, buff, cure, cut, edges. What is tooled or moulded is cut
 * oversize, cased, worked and dried through first, then dyed, and trimmed to the line at the end. (A craft teacher’s
 * order for vegetable-tanned leather, and common practice.)
 */
export function orderOfWork(input: WorkInput): WorkStep[] {
  const { preparation, worked, isWhole, takesOut = false } = input;
  const step = stepMaker(input.workshop);
  const first = [
    step({ kind: 'look over', once: true, each: 'hands, looking over' }),
    step({ kind: 'test', once: true, each: 'hands, test piece', wait: 'test piece dries' }),
    ...(isWhole
      ? takesOut
        ? [step({ kind: 'take out', each: 'hands, rough cut' })]
        : []
      : [step({ kind: 'rough cut', each: 'hands, rough cut' })]),
  ];
  const last = worked === undefined ? 'cut' : 'trim';
  return [
    ...first,
    ...(worked === undefined ? evenedOut(input, step) : workedWet(step)),
    ...dyed(input, step),
    ...fedAfter(input, step),
    ...(preparation.resist === undefined
      ? []
      : [step({ kind: 'resist', product: preparation.resist, ...COAT, wait: 'resist dries' })]),
    ...finished(input, step),
    step({ kind: last, perPiece: 'hands, cutting a piece' }),
    step({ kind: 'edges', perPiece: 'hands, edges of a piece' }),
  ];
}

interface StepWish extends Pick<WorkStep, 'kind' | 'coat' | 'of' | 'product'> {
  readonly once?: boolean;
  /** Names of figures. */
  readonly each?: string;
  readonly perM2?: string;
  readonly perPiece?: string;
  readonly wait?: string;
}

const COAT = { each: 'hands, setting up', perM2: 'hands, a coat' } as const;
const NOTHING: Span = { min: 0, max: 0 };
const MINUTES = 60;

type StepMaker = (wish: StepWish) => WorkStep;

function stepMaker(workshop: Workshop): StepMaker {
  const value = (name: string | undefined): Span =>
    name === undefined ? NOTHING : figureOf(workshop, name).value;
  return ({ once = false, each, perM2, perPiece, wait, ...said }) => ({
    ...said,
    once,
    hands: { each: value(each), perM2: value(perM2), perPiece: value(perPiece) },
    waitH: wait === undefined ? NOTHING : inHours(workshop, wait),
    ...(wait === undefined ? {} : { waitSource: figureOf(workshop, wait).source }),
  });
}

function inHours(workshop: Workshop, name: string): Span {
  const { value, unit } = figureOf(workshop, name);
  return unit === 'min' ? { min: value.min / MINUTES, max: value.max / MINUTES } : value;
}

function stateOf({ worked, isFullOfOil = false }: WorkInput): LeatherState {
  return { isWorked: worked !== undefined, isFullOfOil };
}

function evenedOut(input: WorkInput, step: StepMaker): WorkStep[] {
  const { preparation } = input;
  if (conditioningOf(preparation) === 'damp') {
    const wiping = { each: 'hands, setting up', perM2: 'hands, wiping or casing' };
    return [step({ kind: 'wipe', ...wiping, wait: 'damp leather evens out' })];
  }
  if (!feedingOf(preparation, stateOf(input)).before) return [];
  const product = preparation.condition!;
  return [step({ kind: 'condition', product, ...COAT, wait: 'rest after conditioning' })];
}

function workedWet(step: StepMaker): WorkStep[] {
  const casing = { each: 'hands, setting up', perM2: 'hands, wiping or casing' };
  return [
    step({ kind: 'case', ...casing, wait: 'cased leather evens out' }),
    step({ kind: 'work', perPiece: 'hands, tooling or moulding', wait: 'wet leather dries' }),
  ];
}

function dyed({ preparation, workshop }: WorkInput, step: StepMaker): WorkStep[] {
  const { dye } = preparation;
  const count = dyeCoats(preparation, workshop).max;
  if (dye === undefined || count === 0) return [];
  // A dye of unknown base is given the time of the slowest.
  const base = dyeBaseOf(preparation) ?? 'water';
  const coats = Array.from({ length: count }, (_, i) =>
    step({
      kind: 'dye',
      product: dye,
      coat: i + 1,
      of: count,
      ...COAT,
      wait: i < count - 1 ? `between coats, ${dyeCoverage(base)}` : `dye dries, ${base}`,
    }),
  );
  return [...coats, step({ kind: 'rub off', each: 'hands, setting up', perM2: 'hands, buffing' })];
}

function fedAfter(input: WorkInput, step: StepMaker): WorkStep[] {
  const { preparation } = input;
  if (!feedingOf(preparation, stateOf(input)).after) return [];
  const product = preparation.condition!;
  return [step({ kind: 'condition again', product, ...COAT, wait: 'rest after conditioning' })];
}

function finished({ preparation, workshop }: WorkInput, step: StepMaker): WorkStep[] {
  const { finish } = preparation;
  const count = finishCoats(preparation, workshop).max;
  if (finish === undefined || count === 0) return [];
  // A finish of unknown kind is given the time of the slowest.
  const kind = finishKindOf(finish) ?? 'oil';
  const coats = Array.from({ length: count }, (_, i) =>
    step({
      kind: 'finish',
      product: finish,
      coat: i + 1,
      of: count,
      ...COAT,
      wait: `between coats, ${kind}`,
    }),
  );
  const buffing = { each: 'hands, setting up', perM2: 'hands, buffing' };
  return [...coats, step({ kind: 'buff', ...buffing, wait: `cure, ${kind}` })];
}
