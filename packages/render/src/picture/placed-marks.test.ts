import type { Layout } from '@hidebound/leather';
import { expect, test } from 'vitest';
import type { Drawing, GroupElement } from '../drawing/model.js';
import { loadFontBook } from '../node.js';
import { labelBoxesOverlap } from '../label/label-box.js';
import { allElements, groupsNamed, inkBox, openGroup, textsOf } from '../sample/read-drawing.js';
import { sampleHide } from '../sample/sample-hide.js';
import { sampleLayout } from '../sample/sample-layout.js';
import { PAPER } from '../sheet/palette.js';
import { drawCuttingSheets } from '../sheet/cutting-sheet.js';

const fonts = loadFontBook();
const hide = sampleHide({ id: 'shoulder-02', kind: 'shoulder', seed: 4, flaws: 0 });
const layout = sampleLayout({ hides: [hide], sets: 1, seed: 2 });

/** The layout with a row of five punches, so wide, across the middle of every piece that is broad enough. */
function punched(diameterMm: number): Layout {
  const pieces = layout.pieces.map((piece) => {
    const xs = piece.region.outer.map((p) => p.x);
    const ys = piece.region.outer.map((p) => p.y);
    const y = (Math.min(...ys) + Math.max(...ys)) / 2;
    const [from, to] = [Math.min(...xs), Math.max(...xs)];
    const punches = [0.3, 0.4, 0.5, 0.6, 0.7].map((share) => ({
      at: { x: from + (to - from) * share, y },
      diameterMm,
    }));
    return { ...piece, shape: { ...piece.shape, punches } };
  });
  return { ...layout, pieces };
}

function draw(changed: Layout, readings: typeof hide.leather.readings = []): Drawing {
  const measured = { ...hide, leather: { ...hide.leather, readings } };
  return drawCuttingSheets({ layout: changed, hides: [measured], page: 'A4', fonts })[0]!;
}

/** Rings that show the paper: the punches of one piece are one path. */
function rings(sheet: Drawing): { readonly x: number; readonly y: number }[] {
  return allElements(sheet).flatMap((each) =>
    each.kind === 'path' && each.style.fill === PAPER && each.curves.length === 5
      ? each.curves.map((curve) => curve.start)
      : [],
  );
}

test('when punches are large enough on paper, each is drawn, and no label lies on it', () => {
  const sheet = draw(punched(6));
  const drawn = rings(sheet);
  expect(drawn).toHaveLength(5 * layout.placements.length);
  const labels = groupsNamed(sheet, 'labels', 'label piece ').flatMap((label: GroupElement) =>
    label.elements.flatMap(openGroup).flatMap((each) => (each.kind === 'text' ? [each] : [])),
  );
  expect(labels.length).toBeGreaterThan(0);
  for (const text of labels) {
    for (const center of drawn) {
      const punch = { center, widthMm: 0.05, heightMm: 0.05, angleDeg: 0 };
      expect(labelBoxesOverlap(inkBox(fonts, text), punch), text.text).toBe(false);
    }
  }
});

test('when punches would be specks on paper, they are left out', () => {
  expect(rings(draw(punched(1)))).toHaveLength(0);
});

test('when the thickness was measured, its figure stands on bare leather only, and the legend says what it is', () => {
  const [placement] = layout.placements;
  const covered = { at: { x: placement!.x, y: placement!.y }, mm: 9.9 };
  const corner = hide.outline.start;
  const bare = Array.from({ length: 8 }, (_, i) => ({
    at: { x: corner.x + 60 * (i + 1), y: corner.y + 60 },
    mm: 1.5 + i / 10,
  }));
  const words = textsOf(draw(layout, [covered, ...bare])).map((text) => text.text);
  expect(words).toContain('thickness measured here, mm');
  expect(bare.some(({ mm }) => words.includes(mm.toFixed(1)))).toBe(true);
  expect(textsOf(draw(layout)).map((text) => text.text)).not.toContain('thickness measured here, mm');
});
