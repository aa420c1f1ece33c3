import { createRandom } from '@hidebound/geometry';
import { describe, expect, test } from 'vitest';
import { timetableOf } from './timetable.js';
import type { Task, Timetable, TimetableOptions } from './timetable.js';

const DAY = 24 * 60;

function task(id: string, handsMin: number, waitMin: number, after: readonly string[] = [], lot = id): Task {
  return { id, lot, handsMin, waitMin, after };
}

function startOf({ tasks }: Timetable, id: string): number {
  return tasks.find((each) => each.id === id)!.startMin;
}

test('when one leather waits, the hands go on with the other', () => {
  const table = timetableOf([
    task('dye a', 20, 60),
    task('finish a', 10, 0, ['dye a']),
    task('dye b', 20, 60),
    task('finish b', 10, 0, ['dye b']),
  ]);
  // a: 0–20, waits to 80; b: 20–40, waits to 100.
  expect(['dye a', 'dye b', 'finish a', 'finish b'].map((id) => startOf(table, id))).toEqual([
    0, 20, 80, 100,
  ]);
  expect(table.endMin).toBe(110);
  expect(table.handsMin).toBe(60);
});

test('when two are ready, the one goes first that the longest waiting hangs on', () => {
  const table = timetableOf([task('short', 10, 0), task('long', 10, 600)]);
  expect(startOf(table, 'long')).toBe(0);
  expect(startOf(table, 'short')).toBe(10);
});

test('when a task would run past closing, it begins the next morning, and leather waits over night', () => {
  const hours = { fromMin: 8 * 60, toMin: 17 * 60 };
  const table = timetableOf(
    [task('first', 30, 12 * 60), task('second', 30, 0, ['first']), task('late', 60, 0, ['second'])],
    { hours, startMin: 16 * 60 },
  );
  expect(startOf(table, 'first')).toBe(16 * 60);
  expect(startOf(table, 'second')).toBe(DAY + 8 * 60);
  expect(startOf(table, 'late')).toBe(DAY + 8 * 60 + 30);
});

test('when a task is longer than a working day, or tasks wait in a circle, it is refused', () => {
  const hours = { fromMin: 8 * 60, toMin: 9 * 60 };
  expect(() => timetableOf([task('long', 61, 0)], { hours })).toThrow(RangeError);
  expect(() => timetableOf([task('a', 1, 0, ['b']), task('b', 1, 0, ['a'])])).toThrow(RangeError);
});

/** Chains of steps over several blocks, some that hang on two. */
function randomTasks(seed: number): Task[] {
  const random = createRandom(seed);
  const whole = (most: number): number => Math.floor(random.next() * (most + 1));
  const chains = 1 + whole(5);
  return Array.from({ length: chains }, (_, chain) =>
    Array.from({ length: 1 + whole(7) }, (__, step): Task => {
      const after = step === 0 ? [] : [`${chain}/${step - 1}`];
      const other = chain > 0 && whole(3) === 0 ? [`${chain - 1}/0`] : [];
      return task(`${chain}/${step}`, whole(90), whole(30 * 60), [...after, ...other], `step ${step}`);
    }),
  ).flat();
}

function expectSound(tasks: readonly Task[], options: TimetableOptions): void {
  const table = timetableOf(tasks, options);
  const byId = new Map(table.tasks.map((each) => [each.id, each]));
  expect(byId.size).toBe(tasks.length);
  const inOrder = [...table.tasks].sort((a, b) => a.startMin - b.startMin || a.endMin - b.endMin);
  inOrder.forEach((each, i) => {
    if (i > 0) expect(each.startMin).toBeGreaterThanOrEqual(inOrder[i - 1]!.endMin);
    expect(each.startMin).toBeGreaterThanOrEqual(options.startMin ?? 0);
    expect(each.endMin - each.startMin).toBe(each.handsMin);
    for (const id of each.after) {
      const before = byId.get(id)!;
      expect(each.startMin).toBeGreaterThanOrEqual(before.endMin + before.waitMin);
    }
    if (options.hours === undefined) return;
    const day = Math.floor(each.startMin / DAY) * DAY;
    expect(each.startMin - day).toBeGreaterThanOrEqual(options.hours.fromMin);
    expect(each.endMin - day).toBeLessThanOrEqual(options.hours.toMin);
  });
}

describe('whatever the tasks', () => {
  const seeds = Array.from({ length: 100 }, (_, i) => i + 1);

  test('when nothing bounds the day, hands are in one place at a time and no waiting is cut short', () => {
    for (const seed of seeds) expectSound(randomTasks(seed), {});
  });

  test('when there are working hours, hands keep to them as well', () => {
    const hours = { fromMin: 8 * 60, toMin: 17 * 60 };
    for (const seed of seeds) expectSound(randomTasks(seed), { hours, startMin: 600 + seed });
  });
});
