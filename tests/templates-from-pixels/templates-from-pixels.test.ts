import { mkdirSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { hideboundHere, testFolder } from '../cli-support.js';
import { testWith } from '../tools/outside.js';
import { misplacedPages } from './check-arrangement.js';
import type { LayoutOfHide } from './compare-with-layout.js';
import { placeName } from './grid-places.js';
import type { GridPlace } from './grid-places.js';
import { joinAndCompare, judgeHeap } from './judge-heap.js';
import { makePicture, makePictures, makeShrunkPicture, poppler, shuffled } from './pictures.js';
import { readPage } from './read-page.js';
import type { PageReading } from './read-page.js';
import { smallLayout } from './small-job.js';

/**
 * The judge of tiled templates. It sees pictures of pages at 600 dpi and docs/templates.md, and shares no code with
 * what divides a layout among pages. bench/templates-from-pixels.mjs runs it on a whole side: then these name the
 * layout, its hide, and another hide of it, from which a strange page is taken.
 */
const LONG_RUN = {
  layout: process.env['HIDEBOUND_PIXELS_LAYOUT'],
  hide: process.env['HIDEBOUND_PIXELS_HIDE'] ?? '',
  otherHide: process.env['HIDEBOUND_PIXELS_OTHER_HIDE'] ?? '',
};
/** What a whole hide put together from its pages may be off anywhere, mm. */
const LIMIT = 0.3;
const SEED = 20260302;
const SHRUNK_TO = 0.97;
/** An edge may darken the pixel that it cuts: two edges of a bar of 100 mm. */
const SCALE_SEEN_WITHIN = 0.001;

const folder = testFolder();

interface Template {
  readonly layout: LayoutOfHide;
  readonly pdf: string;
  readonly pages: readonly string[];
}

async function template(layout: LayoutOfHide, pdf: string): Promise<Template> {
  const run = await hideboundHere(['template', layout.file, '--hide', layout.hide, '--pdf', pdf, '--json']);
  expect(run.status, run.stderr).toBe(0);
  const { result } = JSON.parse(run.stdout) as { result: { pages: { name: string }[] } };
  return { layout, pdf, pages: result.pages.map(({ name }) => name) };
}

let whole: Template;
let other: Template;
/** Names of the pictures by page of the file: only what is expected is told by it. */
let names: readonly string[] = [];
let heap: PageReading[] = [];
const pictures = join(folder, 'pictures');
const fileOf = ({ picture }: PageReading): string => join(pictures, `${picture}.pbm`);
const readPicture = (name: string): PageReading => readPage(join(pictures, `${name}.pbm`), name);
/** The heap as it would be with another picture in one's place. */
const withInstead = (gone: string, instead: PageReading): PageReading[] =>
  heap.map((reading) => (reading.picture === gone ? instead : reading));
const nameOf = (page: string): string => names[whole.pages.indexOf(page)]!;
const say = (words: string): void => {
  if (LONG_RUN.layout !== undefined) process.stdout.write(`${words}\n`);
};

beforeAll(async () => {
  if (!poppler.isThere) return;
  mkdirSync(pictures);
  const { layout, hide, otherHide } = LONG_RUN;
  const [mine, others] =
    layout === undefined
      ? [await smallLayout(folder, 430, 400), await smallLayout(folder, 420, 410)]
      : [
          { file: layout, hide },
          { file: layout, hide: otherHide },
        ];
  whole = await template(mine, join(folder, 'whole.pdf'));
  other = await template(others, join(folder, 'other.pdf'));
  names = makePictures(whole.pdf, whole.pages.length, pictures, SEED);
  const start = performance.now();
  heap = readdirSync(pictures)
    .sort()
    .map((file) => readPicture(file.replace(/\.pbm$/, '')));
  say(`${heap.length} pages read in ${((performance.now() - start) / 1000).toFixed(1)} s`);
}, 600_000);

describe('when a heap of shuffled pictures is put together by the marks in their pixels', () => {
  testWith(poppler, 'every page finds its place, and all lines are where the layout has them', () => {
    const start = performance.now();
    const { sorted, placeOf, faults } = judgeHeap(heap);
    expect(faults).toEqual([]);
    expect(heap.flatMap(({ unreadable }) => unreadable)).toEqual([]);
    expect(Object.fromEntries(placeOf)).toEqual(
      Object.fromEntries(names.map((name, i) => [name, whole.pages[i]])),
    );
    const { joined, comparison } = joinAndCompare(heap, sorted, whole.layout, fileOf);
    const { seen, hidden, absent, unshown, greatestMm, worst } = comparison;
    const at = worst?.sample;
    say(
      `${sorted.joins.length} joins; the two prints of a mark are at most ${joined.worstMark.mm.toFixed(3)} mm apart\n` +
        `${seen.length} places measured, at most ${greatestMm.toFixed(3)} mm off (${at?.kind} of ${at?.of}); ` +
        `${hidden} hidden by other lines, ${absent.length} without a line, ${unshown.length} on no page; ` +
        `${((performance.now() - start) / 1000).toFixed(1)} s`,
    );
    expect(joined.worstMark.mm).toBeLessThanOrEqual(LIMIT);
    expect(absent).toEqual([]);
    expect(unshown).toEqual([]);
    expect(hidden).toBeLessThan(seen.length / 5);
    expect(greatestMm).toBeLessThanOrEqual(LIMIT);
  });

  testWith(poppler, 'a piece that lies half a millimetre from where the layout has it is seen', () => {
    const layout = JSON.parse(readFileSync(whole.layout.file, 'utf8')) as {
      hides: { file: string }[];
      placements: { hide: string; x: number; y: number }[];
    };
    for (const hide of layout.hides) hide.file = resolve(dirname(whole.layout.file), hide.file);
    const piece = layout.placements.find(({ hide }) => hide === whole.layout.hide)!;
    piece.x += 0.3;
    piece.y += 0.4;
    const file = join(folder, 'moved.layout.json');
    writeFileSync(file, JSON.stringify(layout));
    const { sorted } = judgeHeap(heap);
    const { comparison } = joinAndCompare(heap, sorted, { ...whole.layout, file }, fileOf);
    say(`a piece moved by 0.5 mm in the layout: ${comparison.greatestMm.toFixed(3)} mm off`);
    expect(comparison.greatestMm).toBeGreaterThan(LIMIT);
  });

  testWith(
    poppler,
    'a page that lies in place of another is named, and so is the one that is missing',
    () => {
      const [gone, twice] = removablePages(SEED + 1);
      const { faults } = judgeHeap(
        withInstead(nameOf(gone), { ...readPicture(nameOf(twice)), picture: 'again' }),
      );
      say(`${twice} in place of ${gone}: ${faults.join('; ')}`);
      const pair = ['again', nameOf(twice)];
      const isCopy = [
        `${pair[0]} shows the same page as ${pair[1]}`,
        `${pair[1]} shows the same page as ${pair[0]}`,
      ];
      expect(faults).toHaveLength(2);
      expect(isCopy).toContain(faults[0]);
      expect(faults[1]).toBe(`nothing lies at ${gone}, where its neighbours have marks`);
    },
  );

  testWith(poppler, 'a page from another hide is named', () => {
    const [gone] = removablePages(SEED + 2);
    const strange = shuffled(other.pages.length, SEED + 2)[0]!;
    makePicture(other.pdf, strange, join(pictures, 'strange'));
    const { faults } = judgeHeap(withInstead(nameOf(gone), readPicture('strange')));
    say(`a strange page in place of ${gone}: ${faults.join('; ')}`);
    expect(faults).toEqual([
      'strange belongs to none of the others',
      `nothing lies at ${gone}, where its neighbours have marks`,
    ]);
  });

  testWith(poppler, 'two pages that lie in each other’s place are named', () => {
    const { places } = judgeHeap(heap).sorted;
    const [a, b] = twoApart(places);
    const exchanged = new Map(places).set(a, places.get(b)!).set(b, places.get(a)!);
    const misplaced = misplacedPages(heap, exchanged);
    say(
      `${placeName(places.get(a)!)} and ${placeName(places.get(b)!)} exchanged: ${misplaced.map((page) => heap[page]!.picture).join(', ')} named`,
    );
    expect([...misplaced].sort()).toEqual([a, b].sort());
    expect(misplacedPages(heap, places)).toEqual([]);
  });

  testWith(
    poppler,
    'a page printed at 97 % is named by its check bars, and the rest still lies right',
    () => {
      const page = whole.pages.indexOf(removablePages(SEED + 3)[0]);
      makeShrunkPicture(whole.pdf, page, join(pictures, 'shrunk'), SHRUNK_TO);
      const shrunk = readPicture('shrunk');
      const changed = withInstead(names[page]!, shrunk);
      const { sorted, faults } = judgeHeap(changed);
      say(faults.join('; '));
      expect(faults).toHaveLength(1);
      expect(faults[0]).toMatch(new RegExp(`^shrunk \\(${whole.pages[page]}\\) is printed at 97\\.`));
      expect(Math.abs(shrunk.scale.level - SHRUNK_TO)).toBeLessThan(SCALE_SEEN_WITHIN);
      expect(Math.abs(shrunk.scale.upright - SHRUNK_TO)).toBeLessThan(SCALE_SEEN_WITHIN);
      const { comparison } = joinAndCompare(changed, sorted, whole.layout, fileOf);
      say(`without it, the others are at most ${comparison.greatestMm.toFixed(3)} mm off`);
      expect(comparison.greatestMm).toBeLessThanOrEqual(LIMIT);
    },
  );
});

/** Two pages, drawn by a seed, without either of which the others still hold together. */
function removablePages(seed: number): [string, string] {
  const removable = shuffled(heap.length, seed).filter((i) => {
    const rest = heap.filter(({ picture }) => picture !== names[i]);
    return judgeHeap(rest).placeOf.size === rest.length;
  });
  return [whole.pages[removable[0]!]!, whole.pages[removable[1]!]!];
}

/** Two pages that are no neighbours and have the most neighbours of all, so that the exchange is told by many joins. */
function twoApart(places: ReadonlyMap<number, GridPlace>): [number, number] {
  const pages = [...places.keys()];
  const apart = (a: number, b: number): number => {
    const [p, q] = [places.get(a)!, places.get(b)!];
    return Math.abs(p.column - q.column) + Math.abs(p.row - q.row);
  };
  const neighbours = (page: number): number => pages.filter((one) => apart(page, one) === 1).length;
  const [a, ...rest] = pages.sort((p, q) => neighbours(q) - neighbours(p)) as [number, ...number[]];
  return [a, rest.find((b) => apart(a, b) > 1)!];
}

test('when the judge reads pages, it uses nothing of the packages', () => {
  const reader = readdirSync(import.meta.dirname).filter(
    (file) =>
      !['templates-from-pixels.test.ts', 'crosses.test.ts', 'small-job.ts', 'pictures.ts'].includes(file),
  );
  for (const file of reader) {
    const text = readFileSync(join(import.meta.dirname, file), 'utf8');
    const from = [...text.matchAll(/from '([^']+)'/g)].map(([, name]) => name!);
    expect(
      from.filter((name) => !/^(\.\/[\w-]+\.js|node:[\w/]+)$/.test(name)),
      file,
    ).toEqual([]);
  }
});
