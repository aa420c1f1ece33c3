import type { Diagnostic } from '../model/diagnostic.js';
import type { ResolvedArticle, ResolvedOrder, ThreadLine } from '../model/order.js';
import type { StitchSeam, ThreadNeed } from '../model/stitch.js';
import { trimmed } from '../units/length.js';
import { PITCH_PER_THREAD } from './stitch-constants.js';
import { pitchSuitsThread } from './thread.js';

/** Thread by name for all sets, in the order in which seams first name it. Seams without a known stack are left out. */
export function threadNeeds(
  order: ResolvedOrder,
  seams: readonly StitchSeam[],
  setsFor: (article: ResolvedArticle) => number,
): readonly ThreadNeed[] {
  const sets = new Map(order.articles.map((article) => [article.name, setsFor(article)]));
  const names = [...new Set(seams.map(({ thread }) => thread))];
  return names.map((thread): ThreadNeed => {
    const own = seams.filter((seam) => seam.thread === thread && (seam.threadMm ?? 0) > 0);
    const times = (seam: StitchSeam): number => seam.perSet * sets.get(seam.article)!;
    const statedMm = statedThread(order, thread, sets);
    return {
      thread,
      seams: own.reduce((sum, seam) => sum + times(seam), 0),
      lengthMm: own.reduce((sum, seam) => sum + times(seam) * seam.threadMm!, 0),
      ...(statedMm === undefined ? {} : { statedMm }),
    };
  });
}

/** What order and articles say of a thread's length; undefined if nobody does. */
function statedThread(
  order: ResolvedOrder,
  thread: string,
  sets: ReadonlyMap<string, number>,
): number | undefined {
  const lengths = [
    ...order.threads.map((line) => ({ line, times: 1 })),
    ...order.articles.flatMap(({ name, threads }) =>
      threads.map((line) => ({ line, times: sets.get(name)! })),
    ),
  ].filter(({ line }) => line.name === thread && line.lengthMm !== undefined);
  if (lengths.length === 0) return undefined;
  return lengths.reduce((sum, { line, times }) => sum + line.lengthMm! * times, 0);
}

const MM_PER_M = 1000;

/** Thread that will not do, and thread that looks odd at its pitch. */
export function threadFindings(
  order: ResolvedOrder,
  seams: readonly StitchSeam[],
  threads: readonly ThreadNeed[],
): readonly Diagnostic[] {
  return [...tooLittle(threads), ...unlikePitch(order, seams)];
}

function tooLittle(threads: readonly ThreadNeed[]): Diagnostic[] {
  return threads.flatMap(({ thread, lengthMm, statedMm }): Diagnostic[] => {
    if (statedMm === undefined || lengthMm <= statedMm) return [];
    const params = {
      thread,
      neededM: trimmed(Math.ceil(lengthMm / MM_PER_M), 0),
      statedM: trimmed(statedMm / MM_PER_M, 1),
    };
    return [{ code: 'stitch-thread-short', severity: 'warning', params }];
  });
}

/** One hint for each thread and article. */
function unlikePitch(order: ResolvedOrder, seams: readonly StitchSeam[]): Diagnostic[] {
  const seen = new Set<string>();
  return seams.flatMap(({ article, thread, pitchMm }): Diagnostic[] => {
    const threadMm = thicknessOf(order, article, thread);
    if (threadMm === undefined) return [];
    const verdict = pitchSuitsThread(pitchMm, threadMm);
    const key = JSON.stringify([article, thread, verdict]);
    if (verdict === 'suits' || seen.has(key)) return [];
    seen.add(key);
    const params = {
      article,
      thread,
      threadMm: trimmed(threadMm, 2),
      pitchMm: trimmed(pitchMm, 1),
      fromMm: trimmed(threadMm * PITCH_PER_THREAD.min, 1),
      toMm: trimmed(threadMm * PITCH_PER_THREAD.max, 1),
    };
    return [{ code: 'stitch-pitch-for-thread', severity: 'note', params }];
  });
}

function thicknessOf(order: ResolvedOrder, article: string, thread: string): number | undefined {
  const own = order.articles.find(({ name }) => name === article)?.threads ?? [];
  const lines: readonly ThreadLine[] = [...own, ...order.threads];
  return lines.find((line) => line.name === thread && line.thicknessMm !== undefined)?.thicknessMm;
}
