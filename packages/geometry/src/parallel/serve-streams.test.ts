import { describe, expect, it } from 'vitest';
import type { FromWorker } from './messages.js';
import { serveStreams } from './serve-streams.js';
import type { ServeOptions } from './serve-streams.js';
import { createToyStream, toyProblem } from './test-toy-stream.js';

/** A worker's side whose owner is the test. */
function served(options: ServeOptions = {}) {
  const posted: FromWorker[] = [];
  let tell: (message: unknown) => void = () => undefined;
  const post = (message: unknown): void => {
    posted.push(message as FromWorker);
  };
  serveStreams({ post, onMessage: (listener) => (tell = listener) }, createToyStream, options);
  return { posted, tell: (message: unknown) => tell(message) };
}

describe("the worker's side", () => {
  it('when it works, it posts progress now and then, and the outcome', () => {
    const { posted, tell } = served();
    tell({ kind: 'start', problem: toyProblem(), streams: [0, 2] });
    tell({ kind: 'work', join: 0 });
    expect(posted.map((message) => message.kind)).toEqual(['progress', 'progress', 'outcome']);
    expect(posted[1]).toMatchObject({
      stream: 0,
      join: 0,
      progress: { phase: 'first-layout', placedCount: 8 },
    });
    const [{ outcome }] = posted.slice(2) as [Extract<FromWorker, { kind: 'outcome' }>];
    tell({ kind: 'work', join: 1, best: outcome.answer });
    const outcomes = posted.slice(3).filter((message) => message.kind === 'outcome');
    expect(outcomes.map(({ stream, join }) => [stream, join])).toEqual([
      [0, 1],
      [2, 1],
    ]);
  });

  it('when the flag is up, it ends after the unit at work; the first layout is finished all the same', () => {
    const stopFlag = new Int32Array(new SharedArrayBuffer(4));
    const units: string[] = [];
    const { posted, tell } = served({
      pause: ({ stream, join, unit }) => {
        units.push(`${stream}/${join}/${unit}`);
        stopFlag[0] = 1;
      },
    });
    tell({ kind: 'start', problem: toyProblem(), streams: [0, 1], stopFlag });
    tell({ kind: 'work', join: 0 });
    expect(units).toHaveLength(12);
    const last = posted.at(-1) as Extract<FromWorker, { kind: 'outcome' }>;
    expect(last.kind).toBe('outcome');
    stopFlag[0] = 0;
    tell({ kind: 'work', join: 1, best: last.outcome.answer });
    expect(units.slice(12)).toEqual(['0/1/1']);
    expect(posted.at(-1)).toBe(last);
  });

  it.each([
    ['nothing', undefined],
    ['a word', 'start'],
    ['work before the start', { kind: 'work', join: 0 }],
    ['a start without a problem', { kind: 'start', streams: [0] }],
    ['streams that are no numbers', { kind: 'start', problem: {}, streams: ['0'] }],
    ['a flag that is no number in memory', { kind: 'start', problem: {}, streams: [0], stopFlag: true }],
    ['a join without the best of the one before', { kind: 'work', join: 1 }],
  ])('when it is told %s, it answers that it failed', (_, message) => {
    const { posted, tell } = served();
    tell(message);
    expect(posted).toMatchObject([{ kind: 'failed', code: 'worker-failed' }]);
  });
});
