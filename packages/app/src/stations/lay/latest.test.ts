import { describe, expect, it } from 'vitest';
import { latest } from './latest.js';

/** Something that is answered when the test says so. */
function asked() {
  const waiting: {
    readonly input: number;
    readonly answer: (output: string) => void;
    readonly refuse: () => void;
  }[] = [];
  const ask = (input: number): Promise<string> =>
    new Promise((answer, reject) => waiting.push({ input, answer, refuse: () => reject(new Error('no')) }));
  return { waiting, ask };
}
const soon = (): Promise<void> => new Promise((done) => setTimeout(done));

describe('the latest wish', () => {
  it('when many come while one is asked, only the last of them is asked next', async () => {
    const { waiting, ask } = asked();
    const heard: string[] = [];
    const one = latest(
      ask,
      (output) => heard.push(output),
      () => undefined,
    );
    for (const input of [1, 2, 3, 4]) one.wish(input);
    expect(waiting.map(({ input }) => input)).toEqual([1]);
    waiting[0]!.answer('one');
    await soon();
    expect(waiting.map(({ input }) => input)).toEqual([1, 4]);
    waiting[1]!.answer('four');
    await soon();
    expect(heard).toEqual(['one', 'four']);
  });

  it('when it is forgotten, an answer that comes late is not heard, and a new wish is asked', async () => {
    const { waiting, ask } = asked();
    const heard: string[] = [];
    const one = latest(
      ask,
      (output) => heard.push(output),
      () => undefined,
    );
    one.wish(1);
    one.wish(2);
    one.forget();
    waiting[0]!.answer('one');
    await soon();
    expect([heard, waiting.length]).toEqual([[], 1]);
    one.wish(3);
    waiting[1]!.answer('three');
    await soon();
    expect(heard).toEqual(['three']);
  });

  it('when an answer is refused, the next wish is asked all the same', async () => {
    const { waiting, ask } = asked();
    let refusals = 0;
    const one = latest(
      ask,
      () => undefined,
      () => (refusals += 1),
    );
    one.wish(1);
    one.wish(2);
    waiting[0]!.refuse();
    await soon();
    expect([refusals, waiting.map(({ input }) => input)]).toEqual([1, [1, 2]]);
  });
});
