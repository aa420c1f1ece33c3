import { sampleProblem } from '@hidebound/geometry';
import type { Budget, NestProblem } from '@hidebound/geometry';
import { createStream as createRealStream } from '../../packages/geometry/src/nest/stream.js';
import { createToyStream, toyProblem } from '../../packages/geometry/src/parallel/test-toy-stream.js';

/** Which streams a test runs: those of the search itself, or small ones where a test needs speed. */
export type StreamsUnderTest = 'toy' | 'real';

/** The one place that says which streams the tests of this folder run; the problem tells. */
export const createStream: typeof createRealStream = (problem, stream) =>
  isToy(problem) ? createToyStream(problem, stream) : createRealStream(problem, stream);

export function problemUnderTest(streams: StreamsUnderTest, budget: Partial<Budget>): NestProblem {
  return streams === 'toy' ? toyProblem(budget) : realProblem(budget);
}

function isToy({ items }: NestProblem): boolean {
  return items[0]!.id === toyProblem().items[0]!.id;
}

/** A few pieces with all rules on a small hide, because each join of each stream takes a good part of a second. */
function realProblem(budget: Partial<Budget>): NestProblem {
  const hide = { lengthMm: 600, halfWidthMm: 300, corners: 40, flaws: 2 };
  const problem = sampleProblem(4, { pieces: 5, share: 0.3, hide });
  return { ...problem, budget: { seed: 3, streams: 4, ...budget } };
}
