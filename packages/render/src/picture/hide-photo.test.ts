import { Resvg } from '@resvg/resvg-js';
import { circleCurve, curveFromPolyline } from '@hidebound/geometry';
import type { Hide } from '@hidebound/leather';
import { expect, test } from 'vitest';
import type { Drawing } from '../drawing/model.js';
import { loadFontBook } from '../node.js';
import { fourColours } from '../sample/four-colours.js';
import { sampleHide } from '../sample/sample-hide.js';
import { sampleLayout } from '../sample/sample-layout.js';
import { drawLayoutTrueScale } from '../sheet/true-scale.js';
import { writeSvg } from '../svg/write-svg.js';
import { drawHide } from './draw-hide.js';
import type { HidePictures } from './hide-photo.js';
import type { SeenFrom } from './hide-view.js';

const fonts = loadFontBook();

/** A panel of 400 × 200 mm with a round opening of 30 mm about (100, 150), and nothing marked on it. */
const PANEL: Hide = {
  ...sampleHide({ id: 'panel-1', kind: 'side', seed: 1, flaws: 0 }),
  cut: 'panel',
  outline: curveFromPolyline(
    [
      { x: 0, y: 0 },
      { x: 400, y: 0 },
      { x: 400, y: 200 },
      { x: 0, y: 200 },
    ],
    true,
  ),
  openings: [circleCurve({ x: 100, y: 150 }, 30)],
  backbone: [
    { x: 0, y: 1 },
    { x: 400, y: 1 },
  ],
  tightness: [],
  zones: [],
  flaws: [],
  candidates: [],
  unsureEdges: [],
};

/** The picture reaches 20 mm beyond the panel, so that its quarters meet in the panel's middle. */
const PICTURES: HidePictures = new Map([
  ['panel-1', { file: fourColours(), box: { minX: -20, minY: -20, maxX: 420, maxY: 220 } }],
]);

/** Around the panel at true scale. */
const MARGIN_MM = 60;

function trueScale(side: SeenFrom, pictures: HidePictures): Drawing {
  const layout = sampleLayout({ hides: [PANEL], sets: 0, seed: 1 });
  return drawLayoutTrueScale({ layout, hide: PANEL, fonts, side, pictures });
}

const COLOURS = { red: [255, 0, 0], green: [0, 255, 0], blue: [0, 0, 255], black: [0, 0, 0] } as const;

/** Which of the four quarters shines through there, or "none"; x and y from the panel's top left corner as it is seen. */
function quarterAt(drawing: Drawing): (x: number, y: number) => string {
  const { width, pixels } = new Resvg(writeSvg(drawing), { background: '#ffffff' }).render();
  const pxPerMm = width / drawing.widthMm;
  return (x, y) => {
    const at = Math.round((y + MARGIN_MM) * pxPerMm) * width + Math.round((x + MARGIN_MM) * pxPerMm);
    const seen = [...pixels.subarray(4 * at, 4 * at + 3)];
    if (Math.min(...seen) > 200) return 'none';
    const distance = (colour: readonly number[]): number =>
      Math.hypot(...colour.map((level, i) => seen[i]! - (0.5 * level + 0.5 * 245)));
    return Object.entries(COLOURS).sort(([, a], [, b]) => distance(a) - distance(b))[0]![0];
  };
}

test('when a hide has a photo, each place of the leather shows its own place of the photo', () => {
  const quarter = quarterAt(trueScale('grain', PICTURES));
  expect(quarter(185, 80)).toBe('red');
  expect(quarter(215, 80)).toBe('green');
  expect(quarter(185, 120)).toBe('blue');
  expect(quarter(215, 120)).toBe('black');
});

test('when a hide is seen from the flesh side, its photo is mirrored with it', () => {
  const quarter = quarterAt(trueScale('flesh', PICTURES));
  expect(quarter(185, 80)).toBe('green');
  expect(quarter(215, 80)).toBe('red');
  expect(quarter(185, 120)).toBe('black');
  expect(quarter(215, 120)).toBe('blue');
});

test('when the photo reaches beyond the leather, only leather shows it', () => {
  const quarter = quarterAt(trueScale('grain', PICTURES));
  expect(quarter(-10, 60)).toBe('none');
  expect(quarter(410, 150)).toBe('none');
  // The opening.
  expect(quarter(100, 150)).toBe('none');
  expect(quarter(100, 184)).toBe('blue');
});

test('when a hide has no photo of its own, nothing of it is drawn', () => {
  const other: HidePictures = new Map([['panel-2', PICTURES.get('panel-1')!]]);
  expect(trueScale('grain', other)).toEqual(trueScale('grain', new Map()));
  expect(trueScale('grain', new Map()).layers.map(({ name }) => name)).not.toContain('photo');
});

test('when a layout is drawn, the photo lies over the leather and below every line and letter', () => {
  const hide = sampleHide({ id: 'side-07', kind: 'side', seed: 3, flaws: 27 });
  const layout = sampleLayout({ hides: [hide], sets: 1, seed: 2 });
  const pictures: HidePictures = new Map([['side-07', PICTURES.get('panel-1')!]]);
  const names = drawLayoutTrueScale({ layout, hide, fonts, pictures }).layers.map(({ name }) => name);
  const photo = names.indexOf('photo');
  const before = ['hide', 'unsure edges', 'offcuts', 'pieces'];
  expect(names.slice(0, photo).filter((name) => !before.includes(name))).toEqual([]);
  for (const name of ['zones', 'direction', 'flaws', 'hide edge', 'cut lines', 'labels']) {
    expect(names.indexOf(name), name).toBeGreaterThan(photo);
  }
});

test('when the bare hide is drawn, its photo is plainer than under pieces', () => {
  const opacities = [drawHide({ hide: PANEL, fonts, pictures: PICTURES }), trueScale('grain', PICTURES)].map(
    (drawing) => Number(/<image [^>]*opacity="([\d.]+)"/.exec(writeSvg(drawing))![1]),
  );
  expect(opacities[0]).toBeGreaterThan(opacities[1]!);
});
