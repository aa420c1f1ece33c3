import { compareAnswers } from '@hidebound/geometry';
import type { NestAnswer, NestProblem } from '@hidebound/geometry';
import {
  answerOfLayout,
  layoutAgain,
  layoutFrom,
  meaningsIn,
  nestProblemFor,
  problemAgain,
} from '@hidebound/leather';
import type { ItemMeaning, LayablePiece, Layout, LayoutOrigin, NamedHide } from '@hidebound/leather';
import { workshopOf } from '../desk/read-order.js';
import type { LayInput } from '../lay-tasks.js';
import { hidesOfLayout, hidesOfOrder } from './layout-paths.js';
import { changedHides, isOfOrder } from './same-order.js';
import { hasStaying, isUntouched } from './staying.js';
import { APP_VERSION } from './version.js';

/** Streams of every search, as the command line has them: the layout depends on them, so it can't depend on the device. */
const STREAMS = 4;
const FIRST_SEED = 1;

/** What is to be searched, and what becomes of the answer. */
export interface LayPlan {
  readonly problem: NestProblem;
  readonly items: ReadonlyMap<string, ItemMeaning>;
  readonly pieces: readonly LayablePiece[];
  readonly hides: readonly NamedHide[];
  /** What stays: the finished layout is held against it. */
  readonly keep: Pick<Layout, 'placements'> | undefined;
  /** Only an answer that is better than what lies there already is of use. */
  readonly isBetter: (answer: NestAnswer) => boolean;
  readonly layoutOf: (answer: NestAnswer) => Layout;
}

export function planFor(input: LayInput): LayPlan {
  const present = presentLayout(input);
  return present === undefined ? planAnew(input, undefined) : planAround(input, present);
}

function presentLayout({ files, layoutPath }: LayInput): Layout | undefined {
  const file = layoutPath === undefined ? undefined : files.get(layoutPath);
  return file?.kind === 'layout' ? file.layout : undefined;
}

/** With all that the order and the hides say now; of an older layout only what is locked or cut stays. */
function planAnew(input: LayInput, keep: Layout | undefined): LayPlan {
  const { order, pieces } = input.read;
  const hides = hidesOfOrder(order, input.orderPath, input.files);
  const workshop = workshopOf(input.files);
  const budget = { seed: FIRST_SEED, streams: STREAMS };
  const kept = keep === undefined ? {} : { keep };
  const given = { order, pieces, hides, workshop, ...kept };
  const problem = nestProblemFor({ ...given, budget });
  return {
    problem: problem.problem,
    items: problem.items,
    pieces,
    hides,
    keep,
    isBetter: () => true,
    layoutOf: (answer) => layoutFrom({ ...given, problem, answer, origin: originOf(FIRST_SEED) }),
  };
}

function planAround(input: LayInput, present: Layout): LayPlan {
  const hides = hidesOfLayout(present, input.layoutPath!, input.files);
  const isToday = isOfOrder(present, input.read) && changedHides(present, hides).length === 0;
  const stays = hasStaying(present);
  if (!isToday || (input.wish === 'anew' && !stays)) return planAnew(input, stays ? present : undefined);
  const seed = input.wish === 'go on' ? present.origin.seed + 1 : FIRST_SEED;
  const again = {
    layout: present,
    hides,
    anew: input.wish !== 'missing',
    budget: { seed, streams: STREAMS },
  };
  const prepared = problemAgain(again);
  const before = answerOfLayout(present, prepared.own).answer;
  return {
    problem: prepared.problem,
    items: prepared.own.items,
    pieces: present.pieces,
    hides,
    keep: prepared.keep,
    isBetter: (answer) => input.wish !== 'go on' || compareAnswers(prepared.problem, answer, before) < 0,
    layoutOf: (answer) =>
      isUntouched(present)
        ? layoutFrom({
            ...present,
            hides,
            problem: prepared.own,
            answer,
            keep: present,
            origin: originOf(seed),
            ...meaningsIn(present),
          })
        : layoutAgain(again, prepared, answer, originOf(seed)),
  };
}

function originOf(seed: number): Omit<LayoutOrigin, 'joins'> {
  return { version: APP_VERSION, seed, streams: STREAMS };
}
