import { curveArea, curveBox } from '@hidebound/geometry';
import fc from 'fast-check';
import svgpath from 'svgpath';
import { describe, expect, test } from 'vitest';
import { parsePathData } from './path-data.js';

const ends = (d: string) =>
  parsePathData(d).subpaths.flatMap(({ segments }) => segments.map(({ to }) => [to.x, to.y]));

describe('path data', () => {
  test('when numbers follow each other without spaces, they are told apart', () => {
    expect(ends('M0 0L10-5.5.5 1e1-2')).toEqual([
      [10, -5.5],
      [0.5, 10],
    ]);
  });

  test('when arc flags are written without spaces, the arc is read', () => {
    const { subpaths, problem } = parsePathData('M0 0a5 5 0 0110 0z');
    expect(problem).toBeUndefined();
    expect(curveArea(subpaths[0]!)).toBeCloseTo((Math.PI * 25) / 2, 6);
  });

  test('when a number has leading zeros, it is read as SVG has it', () => {
    expect(ends('M0 0L09 007')).toEqual([[9, 7]]);
  });

  test('when the data breaks off, what came before stays and the place is told', () => {
    const { subpaths, problem } = parsePathData('M0 0L10 0L10 10L5');
    expect(subpaths[0]!.segments).toHaveLength(2);
    expect(problem).toEqual({ kind: 'broken', at: 17 });
  });

  test('when a command follows z without a move, it starts where the outline began', () => {
    const { subpaths } = parsePathData('M10 10h5v5zl-3 0');
    expect(subpaths[1]!.start).toEqual({ x: 10, y: 10 });
  });

  // SVG 2, section 9.3.6 and 9.3.7: reflected handles.
  test('when S and T follow a curve, their handles are mirrored', () => {
    const { subpaths } = parsePathData('M0 0C0 10 10 10 10 0S20-10 20 0');
    expect(subpaths[0]!.segments[1]).toMatchObject({ handle1: { x: 10, y: -10 } });
    const [first, second] = parsePathData('M0 0Q5 6 10 0T20 0').subpaths[0]!.segments;
    if (first?.kind !== 'cubic' || second?.kind !== 'cubic') throw new Error('No cubics.');
    expect(first.handle1.x).toBeCloseTo(10 / 3, 9);
    expect(first.handle1.y).toBeCloseTo(4, 9);
    expect(second.handle2.x).toBeCloseTo(50 / 3, 9);
    expect(second.handle2.y).toBeCloseTo(-4, 9);
  });

  // SVG 2, appendix B.2.5: radii too small to reach are scaled up; a radius of 0 is a line.
  test('when radii are too small, the arc is a half circle on its ends', () => {
    expect(curveBox(parsePathData('M0 0A1 1 0 0 1 10 0').subpaths[0]!).minY).toBeCloseTo(-5, 6);
    expect(parsePathData('M0 0A0 5 0 0 1 10 0').subpaths[0]!.segments).toEqual([
      { kind: 'line', to: { x: 10, y: 0 } },
    ]);
  });
});

describe('against another reader of path data (svgpath 2.6.0)', () => {
  const number = fc.integer({ min: -9999, max: 9999 }).map((n) => n / 100);
  const command = fc.constantFrom(
    'L',
    'l',
    'H',
    'h',
    'V',
    'v',
    'C',
    'c',
    'S',
    's',
    'Q',
    'q',
    'T',
    't',
    'A',
    'a',
    'Z',
    'M',
    'm',
  );
  const counts: Record<string, number> = { l: 2, h: 1, v: 1, c: 6, s: 4, q: 4, t: 2, z: 0, m: 2 };
  const step = fc
    .tuple(command, fc.array(number, { minLength: 7, maxLength: 7 }), fc.boolean(), fc.boolean())
    .map(([letter, args, large, sweep]) => {
      const [rx, ry, turn, , , x, y] = args;
      if (letter.toLowerCase() === 'a') {
        return `${letter}${Math.abs(rx!) + 1} ${Math.abs(ry!) + 1} ${turn} ${Number(large)}${Number(sweep)}${x} ${y}`;
      }
      return letter + args.slice(0, counts[letter.toLowerCase()]).join(' ');
    });

  test('when any commands follow each other, every end lies where the other reader puts it', () => {
    fc.assert(
      fc.property(fc.array(step, { minLength: 1, maxLength: 12 }), (steps) => {
        const d = `M1 2${steps.join('')}`;
        const { problem, subpaths } = parsePathData(d);
        expect(problem).toBeUndefined();
        const other = new Set<string>();
        svgpath(d)
          .abs()
          .iterate((segment, _i, x, y) => {
            const [name, ...args] = segment as unknown as [string, ...number[]];
            const ax = name === 'V' ? x : name === 'H' ? args[0]! : (args.at(-2) ?? x);
            const ay = name === 'H' ? y : (args.at(-1) ?? y);
            other.add(`${ax.toFixed(4)} ${ay.toFixed(4)}`);
          });
        for (const { start } of subpaths)
          expect(other).toContain(`${start.x.toFixed(4)} ${start.y.toFixed(4)}`);
        const last = subpaths.at(-1);
        const end = last?.segments.at(-1)!.to;
        if (end !== undefined)
          expect([...other].concat('1.0000 2.0000')).toContain(`${end.x.toFixed(4)} ${end.y.toFixed(4)}`);
      }),
      { seed: 7, numRuns: 300 },
    );
  });
});
