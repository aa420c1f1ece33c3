import type { NestAnswer } from '@hidebound/geometry';
import { checkLayout, pieceCopyOf } from '@hidebound/leather';
import type { ItemMeaning } from '@hidebound/leather';
import type { LayInput, LayOutput, LayProgress, LayTasks, Laid } from './lay-tasks.js';
import { verdictOf } from './laying/found.js';
import { planFor } from './laying/plan.js';
import { search } from './laying/search.js';
import { serveTasks } from './serve-tasks.js';

/** Progress is posted no more often than this, ms: four times a second. */
const TELL_EVERY_MS = 250;

serveTasks<LayTasks>({ lay: (input, { progress }) => lay(input, progress) });

async function lay(input: LayInput, post: (progress: LayProgress) => void): Promise<LayOutput> {
  const started = performance.now();
  const elapsed = (): number => performance.now() - started;
  const plan = planFor(input);
  post({ kind: 'begun', pieces: plan.pieces });
  const end = new AbortController();
  let wasStopped = false;
  input.stop.onmessage = () => {
    wasStopped = true;
    end.abort();
  };
  const alarm = input.seconds === undefined ? undefined : setTimeout(() => end.abort(), input.seconds * 1000);
  const tell = teller(post, elapsed);
  try {
    const { answer, endedEarly } = await search(plan.problem, {
      workers: input.workers,
      signal: end.signal,
      onBest: (best) => plan.isBetter(best) && tell.better(best, plan.items),
      onProgress: tell.going,
    });
    const done = { elapsedMs: elapsed(), wasStopped, endedEarly };
    if (!plan.isBetter(answer)) return { ...done, layout: undefined, verdict: undefined };
    const layout = plan.layoutOf(answer);
    const kept = plan.keep === undefined ? {} : { keep: plan.keep };
    const check = checkLayout(layout, plan.hides, kept);
    return { ...done, layout, verdict: verdictOf(check) };
  } finally {
    clearTimeout(alarm);
    tell.end();
    input.stop.close();
  }
}

type Going = Extract<LayProgress, { kind: 'going' }>;

/** Posts the latest of each kind, now and then. */
function teller(post: (progress: LayProgress) => void, elapsed: () => number) {
  let going: Going | undefined;
  let better: (() => LayProgress) | undefined;
  const flush = (): void => {
    if (going !== undefined) post(going);
    if (better !== undefined) post(better());
    going = undefined;
    better = undefined;
  };
  const timer = setInterval(flush, TELL_EVERY_MS);
  return {
    going: ({
      placedCount,
      demandedCount,
      usedUpMm2,
    }: {
      placedCount: number;
      demandedCount: number;
      usedUpMm2: number;
    }) => {
      going = { kind: 'going', elapsedMs: elapsed(), placed: placedCount, asked: demandedCount, usedUpMm2 };
    },
    better: (answer: NestAnswer, items: ReadonlyMap<string, ItemMeaning>) => {
      better = () => ({ kind: 'better', placements: laidOf(answer, items) });
    },
    end: () => {
      clearInterval(timer);
      flush();
    },
  };
}

function laidOf({ placements }: NestAnswer, items: ReadonlyMap<string, ItemMeaning>): Laid[] {
  return placements.flatMap((placement) => {
    const copy = pieceCopyOf(placement, items);
    const { x, y, rotationDeg, sheet } = placement;
    return copy === undefined ? [] : [{ ...copy, hide: sheet, x, y, rotationDeg }];
  });
}
