import { describe, expect, test } from 'vitest';
import { copy, makeItem, makeJob, place, rectangle } from '../check/test-jobs.js';
import { liftPiece, movePiece, openBench } from './bench.js';
import { judgeMove } from './judge-move.js';

const square = makeItem('square', rectangle(-50, -50, 50, 50));
const { problem, answer } = makeJob({
  items: [square],
  placements: [place('square', 200, 200), place('square', 400, 200, 0, { copy: 2 })],
});

describe('a bench', () => {
  test('when a piece is moved, the old bench stays as it was and the new one has it in the same order', () => {
    const bench = openBench(problem, answer.placements);
    const moved = movePiece(bench, copy('square'), { sheet: 'hide', x: 600, y: 300, rotationDeg: 90 });
    expect(bench.answer.placements).toEqual(answer.placements);
    expect(moved.answer.placements).toEqual([place('square', 600, 300, 90), answer.placements[1]]);
    const to = { sheet: 'hide', x: 250, y: 200, rotationDeg: 0 };
    expect(judgeMove(bench, copy('square', 1, 2), to).map(({ rule }) => rule)).toEqual(['gap']);
    expect(judgeMove(moved, copy('square', 1, 2), to)).toEqual([]);
  });

  test('when a piece is lifted, it is gone, and put down again it comes last', () => {
    const lifted = liftPiece(openBench(problem, answer.placements), copy('square'));
    expect(lifted.answer.placements).toEqual([answer.placements[1]]);
    expect(liftPiece(lifted, copy('square'))).toBe(lifted);
    const down = movePiece(lifted, copy('square'), answer.placements[0]!);
    expect(down.answer.placements).toEqual([answer.placements[1], answer.placements[0]]);
  });

  test('when a placement is no number, unknown or given twice, it does not open', () => {
    const [one, other] = [answer.placements[0]!, answer.placements[1]!];
    expect(() => openBench(problem, [{ ...one, x: Infinity }])).toThrow('Copy 1 of square in set 1');
    expect(() => openBench(problem, [{ ...one, sheet: 'nowhere' }])).toThrow('unknown');
    expect(() => openBench(problem, [one, other, one])).toThrow('placed twice');
    expect(() => movePiece(openBench(problem, []), copy('circle'), one)).toThrow('Copy 1 of circle');
  });

  test('when the problem is not sane, it does not open, and what is not sane is named', () => {
    const broken = { ...problem, distances: { gap: -1, edge: 0, void: 0 } };
    expect(() => openBench(broken, [])).toThrow('distances');
  });
});
