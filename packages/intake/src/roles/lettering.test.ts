import type { RoleRule } from '@hidebound/leather';
import { describe, expect, test } from 'vitest';
import { readPatternSvg } from '../pattern-svg.js';

/** Invented block letters on a field of 10 high, each with its width; O has a hole, i a dot. */
const LETTERS: Readonly<Record<string, { readonly d: string; readonly width: number }>> = {
  L: { d: 'M0 0h2v8h4v2h-6z', width: 6 },
  T: { d: 'M0 0h7v2h-2.5v8h-2v-8h-2.5z', width: 7 },
  O: { d: 'M0 0h8v10h-8zM2 2v6h4v-6z', width: 8 },
  E: { d: 'M0 0h5v2h-3v2h2v2h-2v2h3v2h-5z', width: 5 },
  i: { d: 'M0 3h2v7h-2zM0 0h2v2h-2z', width: 2 },
  '.': { d: 'M0 8.5h1.5v1.5h-1.5z', width: 1.5 },
};

/** A word as one element per letter, or all in one path. */
function word(text: string, transform: string, more = ''): string {
  let x = 0;
  const letters = [...text].map((letter) => {
    if (letter === ' ') {
      x += 4;
      return '';
    }
    const { d, width } = LETTERS[letter]!;
    const path = `<path transform="translate(${x} 0)" d="${d}" fill="black" ${more}/>`;
    x += width + 1.5;
    return path;
  });
  return `<g transform="${transform}">${letters.join('')}</g>`;
}

function read(body: string, roles: readonly RoleRule[] = []) {
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="200mm" height="150mm" viewBox="0 0 200 150">
    <rect id="panel" x="5" y="5" width="150" height="100" fill="none" stroke="black"/>${body}</svg>`;
  return readPatternSvg(svg, { file: 'letters.svg', reading: { file: 'letters.svg', roles } });
}

const noteOf = (result: ReturnType<typeof read>) =>
  result.diagnostics.filter(({ code }) => code === 'lettering-left-out');

describe('texts drawn as outlines', () => {
  test.each([0, 90, 180, 270, 5, 10, 20, 45, -30])(
    'when a text is turned by %i°, its letters are left out with one note',
    (angle) => {
      const result = read(word('TOiLET LiTTLE.', `translate(75 50) rotate(${angle}) scale(.4)`));
      expect(result.pieces).toHaveLength(1);
      expect(result.pieces[0]!.piece.cutOuts).toEqual([]);
      // 13 signs, a hole in O, a dot on each i.
      expect(noteOf(result)).toMatchObject([{ severity: 'note', params: { count: 16, rows: 1 } }]);
      expect(result.diagnostics.map(({ code }) => code)).not.toContain('left-out');
      expect(result.ignored.filter(({ reason }) => reason === 'lettering')).toHaveLength(1);
    },
  );

  test('when all letters of a word are one path, they are left out with their holes', () => {
    const d = 'M20 20h2v8h4v2h-6z M28 20h8v10h-8zM30 22v6h4v-6z M38 20h7v2h-2.5v8h-2v-8h-2.5z';
    const result = read(`<path d="${d}"/>`);
    expect(result.pieces[0]!.piece.cutOuts).toEqual([]);
    expect(noteOf(result)).toMatchObject([
      { params: { count: 4, rows: 1 }, place: { point: { x: 20, y: 20 } } },
    ]);
  });

  test('when a rule gives the letters a role, they keep it', () => {
    const result = read(word('LOT', 'translate(30 30) scale(.4)'), [{ colour: '#000000', role: 'cut' }]);
    expect(noteOf(result)).toEqual([]);
    expect(result.pieces[0]!.piece.cutOuts).toHaveLength(3);
  });

  test('when a rule asks for filled areas, those without a stroke get its role, and no others', () => {
    const both = '<path d="M60 60h9v9h-9z" fill="red" stroke="red"/><path d="M90 60h9v9h-9z" fill="red"/>';
    const rules: RoleRule[] = [{ role: 'ignore', filled: true }];
    const result = read(word('LOT', 'translate(30 30) scale(.4)') + both, rules);
    expect(noteOf(result)).toEqual([]);
    expect(result.pieces[0]!.piece.cutOuts.map(({ start }) => start)).toEqual([{ x: 60, y: 60 }]);
    const others = read(both, [
      { role: 'ignore', filled: false },
      { role: 'cut', filled: true },
    ]);
    expect(others.pieces.map(({ piece }) => piece.cut.start)).toEqual([{ x: 90, y: 60 }]);
  });

  test.each([
    ['slots of one size', [20, 24, 28, 32].map((x) => `<path d="M${x} 20h1v3h-1z"/>`)],
    [
      'circles of several sizes',
      [1, 1.4, 1.8].map((r, i) => `<circle cx="${20 + 5 * i}" cy="20" r="${r}"/>`),
    ],
    ['two shapes in turn', [20, 24, 28, 32].map((x, i) => `<path d="M${x} 20h1v${3 + (i % 2)}h-1z"/>`)],
    ['areas too far apart', [20, 40, 60].map((x, i) => `<path d="M${x} 20h${3 + i}v5h-2z"/>`)],
    [
      'areas at several heights',
      [20, 27, 34].map((x, i) => `<path d="M${x} ${20 + 9 * i}h${3 + i}v5h-2z"/>`),
    ],
    ['areas larger than letters', [10, 40, 70].map((x, i) => `<path d="M${x} 20h${22 + 2 * i}v24h-20z"/>`)],
    ['stroked outlines', [word('LOT', 'translate(30 30) scale(.4)', 'stroke="black"')]],
  ])('when %s stand in a row, they are no lettering', (_, areas) => {
    const result = read(areas.join(''));
    expect(noteOf(result)).toEqual([]);
    expect(result.ignored.filter(({ reason }) => reason === 'lettering')).toEqual([]);
  });

  test('when small filled pieces with stitch lines stand in a row, they stay pieces', () => {
    const pieces = [15, 16, 18].map(
      (size, i) =>
        `<path d="M${10 + 25 * i} 120h${size}v${size}h-${size}z"/><path d="M${12 + 25 * i} 122h8" fill="none" stroke="blue"/>`,
    );
    expect(read(pieces.join('')).pieces).toHaveLength(4);
  });
});
