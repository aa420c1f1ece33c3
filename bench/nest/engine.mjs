// The one place where the bench meets the engine. Contract:
//   search(problem, { seconds, seed, streams, onBest(answer, elapsedMs) }) -> Promise<answer>
// `onBest` is called for the first valid layout and for every better one, as it comes; the answer returned is the
// last best. The first layout is finished however long it takes. A problem that the engine can't do throws an error of code `unsupported`.
import { startNest } from '@hidebound/geometry';

/** Units of work between two pauses, in which messages get out. */
const UNITS_BETWEEN_PAUSES = 64;

/** This engine has one stream: more are not asked of it. */
const STREAMS = 1;

export async function search(problem, { seconds, seed, onBest }) {
  const run = startNest({ ...problem, budget: { seed, streams: STREAMS } });
  const started = performance.now();
  const elapsed = () => performance.now() - started;
  let best;
  for (let unit = 1; !run.done && (best === undefined || elapsed() < 1000 * seconds); unit++) {
    run.advance();
    const present = run.best();
    // Placements are kept as they are until a better layout replaces them.
    if (present !== undefined && present.placements !== best?.placements) onBest(present, elapsed());
    best = present;
    if (unit % UNITS_BETWEEN_PAUSES === 0) await new Promise((go) => setImmediate(go));
  }
  return best;
}
