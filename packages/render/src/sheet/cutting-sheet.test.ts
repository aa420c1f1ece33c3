import { distanceBetween } from '@hidebound/geometry';
import type { Point } from '@hidebound/geometry';
import { beforeAll, describe, expect, test } from 'vitest';
import type { Drawing, PathElement, TextElement } from '../drawing/model.js';
import { isInside, labelBoxCorners, labelBoxesOverlap, nearestOnLabelBox } from '../label/label-box.js';
import type { LabelBox } from '../label/label-box.js';
import { loadFontBook } from '../node.js';
import {
  allElements,
  groupsNamed,
  inkBox,
  openGroup,
  regionOfPath,
  straightLines,
  textsOf,
} from '../sample/read-drawing.js';
import { sampleHide } from '../sample/sample-hide.js';
import { sampleLayout } from '../sample/sample-layout.js';
import { writeSvg } from '../svg/write-svg.js';
import { capitalHeightMm } from '../text/measure-text.js';
import { drawCuttingSheets } from './cutting-sheet.js';

const fonts = loadFontBook();

/** Sheets take a second or two to draw, and far longer on a busy machine. */
const HOOK_MS = 60_000;

/** A leader begins at the edge of its label, which is a little larger than the ink. */
const LABEL_EDGE_MM = 1.5;

function isNextTo(p: Point, box: LabelBox): boolean {
  return distanceBetween(nearestOnLabelBox(box, p), p) <= LABEL_EDGE_MM;
}

const side = sampleHide({ id: 'side-07', kind: 'side', seed: 3, flaws: 27 });
const shoulder = sampleHide({ id: 'shoulder-02', kind: 'shoulder', seed: 4, flaws: 10 });

describe.each([
  {
    name: 'many pieces on a side',
    hides: [side],
    sets: 3,
    page: 'A4',
    side: 'grain',
    long: false,
    offcut: undefined,
  },
  {
    name: 'long names, two hides',
    hides: [side, shoulder],
    sets: 2,
    page: 'Letter',
    side: 'grain',
    long: true,
    offcut: undefined,
  },
  {
    name: 'an offcut, from the flesh side',
    hides: [side],
    sets: 1,
    page: 'A3',
    side: 'flesh',
    long: false,
    offcut: 1300,
  },
] as const)('when the sheet shows $name', ({ hides, sets, page, side: seenFrom, long, offcut }) => {
  let sheets: Drawing[];
  let count: number;
  beforeAll(() => {
    const layout = sampleLayout({
      hides,
      sets,
      seed: 1,
      longNames: long,
      ...(offcut === undefined ? {} : { freeingCutX: offcut }),
    });
    count = layout.placements.length;
    sheets = drawCuttingSheets({ layout, hides, page, side: seenFrom, fonts });
  }, HOOK_MS);

  test('no text lies over another', () => {
    for (const sheet of sheets) {
      const texts = textsOf(sheet).filter((text) => text.text !== '');
      const boxes = texts.map((text) => inkBox(fonts, text));
      for (let i = 0; i < boxes.length; i++) {
        for (let j = i + 1; j < boxes.length; j++) {
          const overlap = labelBoxesOverlap(boxes[i]!, boxes[j]!);
          expect(overlap, `"${texts[i]!.text}" and "${texts[j]!.text}"`).toBe(false);
        }
      }
    }
  });

  test('capitals are at least 1.8 mm high, and all text lies 10 mm within the page', () => {
    for (const sheet of sheets) {
      for (const text of textsOf(sheet)) {
        expect(capitalHeightMm(fonts, text.face, text.sizeMm)).toBeGreaterThanOrEqual(1.8);
        for (const corner of labelBoxCorners(inkBox(fonts, text))) {
          expect(corner.x).toBeGreaterThanOrEqual(10);
          expect(corner.y).toBeGreaterThanOrEqual(10);
          expect(corner.x).toBeLessThanOrEqual(sheet.widthMm - 10);
          expect(corner.y).toBeLessThanOrEqual(sheet.heightMm - 10);
        }
      }
    }
  });

  test('every piece has one label, within it or at a leader that ends in it', () => {
    let labelled = 0;
    for (const sheet of sheets) {
      for (const ground of groupsNamed(sheet, 'pieces', 'piece ')) {
        const region = regionOfPath(ground.elements[0] as PathElement);
        const labels = groupsNamed(sheet, 'labels', `label ${ground.name}`).filter(
          (label) => label.name === `label ${ground.name}`,
        );
        expect(labels).toHaveLength(1);
        const texts = labels[0]!.elements
          .flatMap(openGroup)
          .filter((each): each is TextElement => each.kind === 'text');
        expect(texts[0]!.text.startsWith(ground.name!.slice('piece '.length))).toBe(true);
        const isWithin = texts.every((text) =>
          labelBoxCorners(inkBox(fonts, text)).every((corner) => isInside(corner, region)),
        );
        const isLed = straightLines(labels[0]!).some(
          ([from, to]) => isInside(to, region) && texts.some((text) => isNextTo(from, inkBox(fonts, text))),
        );
        expect(isWithin || isLed, ground.name).toBe(true);
        labelled++;
      }
    }
    expect(labelled).toBe(count);
  });

  test('the side is said in words, and no word is one that the bench does not know', () => {
    const words = sheets.flatMap(textsOf).map((text) => text.text);
    expect(words).toContain(`seen from the ${seenFrom} side`);
    expect(words.some((text) => /^scale 1 : [\d.]+, reduced; not a template$/.test(text))).toBe(true);
    for (const text of words) expect(text).not.toMatch(/\b(seed|effort|void|fill)\b/i);
  });
});

const onShoulder = sampleLayout({ hides: [shoulder], sets: 1, seed: 2 });

function drawShoulder(seen: 'grain' | 'flesh', book = fonts): Drawing {
  return drawCuttingSheets({
    layout: onShoulder,
    hides: [shoulder],
    page: 'A4',
    side: seen,
    fonts: book,
  })[0]!;
}

let drawnFromFlesh: Drawing | undefined;
/** Drawn once for the tests that look at it. */
function fromFlesh(): Drawing {
  return (drawnFromFlesh ??= drawShoulder('flesh'));
}

test('when the same input is drawn twice, both give the same text', () => {
  expect(writeSvg(drawShoulder('flesh', loadFontBook()))).toBe(writeSvg(fromFlesh()));
});

test('when seen from the flesh side, pieces are mirrored and letters are not', () => {
  const middles = (drawing: Drawing): { x: number; y: number }[] =>
    groupsNamed(drawing, 'pieces', 'piece ').map((group) => {
      const { outer } = regionOfPath(group.elements[0] as PathElement);
      const sum = outer.reduce((a, p) => ({ x: a.x + p.x, y: a.y + p.y }), { x: 0, y: 0 });
      return { x: sum.x / outer.length, y: sum.y / outer.length };
    });
  const grain = middles(drawShoulder('grain'));
  const flesh = middles(fromFlesh());
  const turn = (points: { x: number; y: number }[]): number => {
    const [a, b, c] = [points[0]!, points[3]!, points[6]!];
    return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
  };
  expect(Math.sign(turn(grain))).toBe(-Math.sign(turn(flesh)));
  for (const element of allElements(fromFlesh())) {
    if (element.kind === 'text') expect(Math.abs(element.angleDeg)).toBeLessThanOrEqual(100);
  }
});

test('when the layout names a hide that is not given, the error says which', () => {
  expect(() => drawCuttingSheets({ layout: onShoulder, hides: [side], page: 'A4', fonts })).toThrow(
    expect.objectContaining({
      code: 'unknown-hide',
      message: expect.stringContaining('shoulder-02') as string,
    }),
  );
});
