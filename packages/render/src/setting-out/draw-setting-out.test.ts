import { settingOut } from '@hidebound/leather';
import type { Layout } from '@hidebound/leather';
import { beforeAll, describe, expect, test } from 'vitest';
import type { Drawing } from '../drawing/model.js';
import { labelBoxCorners, labelBoxesOverlap } from '../label/label-box.js';
import { loadFontBook } from '../node.js';
import { inkBox, textsOf } from '../sample/read-drawing.js';
import { sampleHide } from '../sample/sample-hide.js';
import { sampleLayout } from '../sample/sample-layout.js';
import { capitalHeightMm } from '../text/measure-text.js';
import { drawSettingOut } from './draw-setting-out.js';

const fonts = loadFontBook();
/** Sheets take a second or two to draw, and far longer on a busy machine. */
const HOOK_MS = 60_000;

const side = sampleHide({ id: 'side-07', kind: 'side', seed: 3, flaws: 14 });
const shoulder = sampleHide({ id: 'shoulder-02', kind: 'shoulder', seed: 4, flaws: 6 });

function numbersOf(layout: Layout, hide: typeof side): string[] {
  return settingOut(layout, hide).steps.flatMap((step) => (step.kind === 'piece' ? [step.piece.number] : []));
}

describe.each([
  {
    name: 'a side and a shoulder on A4',
    hides: [side, shoulder],
    sets: 1,
    page: 'A4',
    seen: 'grain',
    long: false,
  },
  {
    name: 'long names on Letter, from the flesh side',
    hides: [side],
    sets: 2,
    page: 'Letter',
    seen: 'flesh',
    long: true,
  },
  { name: 'a large page', hides: [shoulder], sets: 1, page: 'A3', seen: 'grain', long: false },
] as const)('when the sheet for setting out shows $name', ({ hides, sets, page, seen, long }) => {
  let layout: Layout;
  let sheets: Drawing[];
  beforeAll(() => {
    layout = sampleLayout({ hides, sets, seed: 1, longNames: long });
    sheets = drawSettingOut({ layout, hides, page, side: seen, fonts });
  }, HOOK_MS);

  test('no text lies over another', () => {
    for (const sheet of sheets) {
      const texts = textsOf(sheet).filter((text) => text.text !== '');
      const boxes = texts.map((text) => inkBox(fonts, text));
      for (let i = 0; i < boxes.length; i++) {
        for (let j = i + 1; j < boxes.length; j++) {
          const overlap = labelBoxesOverlap(boxes[i]!, boxes[j]!);
          expect(overlap, `${sheet.title}: "${texts[i]!.text}" and "${texts[j]!.text}"`).toBe(false);
        }
      }
    }
  });

  test('all text lies 10 mm within the page, and its capitals are at least 2.1 mm high', () => {
    for (const text of sheets.flatMap(textsOf)) {
      expect(capitalHeightMm(fonts, text.face, text.sizeMm)).toBeGreaterThanOrEqual(2.1);
    }
    for (const sheet of sheets) {
      for (const corner of textsOf(sheet).flatMap((text) => labelBoxCorners(inkBox(fonts, text)))) {
        expect(Math.min(corner.x, corner.y)).toBeGreaterThanOrEqual(10);
        expect(corner.x).toBeLessThanOrEqual(sheet.widthMm - 10);
        expect(corner.y).toBeLessThanOrEqual(sheet.heightMm - 10);
      }
    }
  });

  test('every piece has its row of measures, and the side is said on every page', () => {
    const rows = sheets.flatMap(tableNumbers);
    expect(rows.sort()).toEqual(hides.flatMap((hide) => numbersOf(layout, hide)).sort());
    for (const sheet of sheets) {
      expect(textsOf(sheet).map(({ text }) => text)).toContain(`seen from the ${seen} side`);
    }
  });
});

/** Bold numbers in the tables of pages without a picture. */
function tableNumbers(sheet: Drawing): string[] {
  if (sheet.layers.some(({ name }) => name === 'hide')) return [];
  return textsOf({ ...sheet, layers: sheet.layers.filter(({ name }) => name === 'tables') })
    .filter(({ text, face }) => /^\d+(\.\d+)?$/.test(text) && face === 'narrow bold')
    .map(({ text }) => text);
}

test(
  'when a side is seen from the flesh side, measures stay and turns go the other way',
  () => {
    const layout = sampleLayout({ hides: [side], sets: 1, seed: 1 });
    const words = (['grain', 'flesh'] as const).map((seen) =>
      drawSettingOut({ layout, hides: [side], page: 'A4', side: seen, fonts }).flatMap(textsOf),
    );
    const figures = words.map((texts) =>
      texts.map(({ text }) => text).filter((text) => /^−?\d+\.\d$/.test(text)),
    );
    expect(figures[1]).toEqual(figures[0]);
    const turns = words.map((texts) => texts.map(({ text }) => text).filter((text) => /^[↻↺] /.test(text)));
    expect(turns[0]!.length).toBeGreaterThan(5);
    const swapped = turns[0]!.map((text) => text.replace(/[↻↺]/, (sign) => (sign === '↻' ? '↺' : '↻')));
    expect(turns[1]).toEqual(swapped);
  },
  HOOK_MS,
);
