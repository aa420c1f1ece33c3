// The one place where the bench meets the engine. Contract:
//   search(problem, { seconds, seed, streams, onBest(answer, elapsedMs) }) -> Promise<answer>
// `onBest` is called for the first valid layout and for every better one, as it comes; the answer returned is the
// last best. The first layout is finished however long it takes. A problem that the engine can't do throws an error of code `unsupported`.
import { runNestInThreads } from '@hidebound/geometry/node';

export async function search(problem, { seconds, seed, streams = 2, onBest }) {
  const started = performance.now();
  const stop = new AbortController();
  const timer = setTimeout(() => stop.abort(), 1000 * seconds);
  try {
    return await runNestInThreads(
      { ...problem, budget: { seed, streams } },
      {
        threads: streams,
        signal: stop.signal,
        onBest: (best) => onBest(best, performance.now() - started),
      },
    );
  } finally {
    clearTimeout(timer);
  }
}
