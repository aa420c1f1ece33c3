import { expect, test } from 'vitest';
import type { Layout, PiecePlacement } from '../model/layout.js';
import type { LayablePiece } from '../model/piece.js';
import { plainPiece, polygonCurve, rectangleCorners, rectangleCurve } from '../testing/plain.js';
import { pieceList } from './piece-list.js';
import { writePieceListCsv, writePieceListJson } from './write-piece-list.js';

const front: LayablePiece = {
  article: 'bag',
  piece: 'front',
  hash: '',
  shape: plainPiece('front', rectangleCurve(-60, -40, 60, 40)),
  region: { outer: rectangleCorners(-60, -40, 60, 40), openings: [] },
  face: [],
  arrowDeg: 90,
  arrowIsGuessed: false,
};
/** A square of 100 mm that stands on a corner; its arrow runs along its sides. */
const patch: LayablePiece = {
  ...front,
  piece: 'patch, "small"',
  shape: plainPiece(
    'patch',
    polygonCurve([
      [0, -70.71068],
      [70.71068, 0],
      [0, 70.71068],
      [-70.71068, 0],
    ]),
  ),
  region: {
    outer: [
      { x: 0, y: -70.71068 },
      { x: 70.71068, y: 0 },
      { x: 0, y: 70.71068 },
      { x: -70.71068, y: 0 },
    ],
    openings: [],
  },
  arrowDeg: 45,
};

const place = (piece: string, copy: number, more: Partial<PiecePlacement> = {}): PiecePlacement => ({
  article: 'bag',
  piece,
  set: 1,
  copy,
  mirrored: false,
  hide: 'side-7',
  x: 100,
  y: 200.5,
  rotationDeg: 12.25,
  locked: false,
  accepted: [],
  state: 'planned',
  ...more,
});

const placements = [
  place('front', 1, { state: 'spoiled' }),
  place('front', 1),
  place('patch, "small"', 1, { x: -3.25 }),
  place('front', 1, { mirrored: true }),
];
const layout = {
  order: {
    name: '=Bags',
    version: '2',
    date: '2026-03-02',
    articles: [
      { name: 'bag', pieces: [{ name: 'front', leather: 'body', thickness: { minMm: 2, maxMm: 2.4 } }] },
    ],
    leathers: [{ name: 'body', colour: 'russet', thickness: { minMm: 3, maxMm: 3 } }],
  },
  pieces: [front, patch],
  placements,
  cuttingOrder: [placements[2]!, placements[3]!, placements[1]!].map((copy, i) => ({
    number: i + 1,
    kind: 'piece',
    hide: 'side-7',
    pieces: [copy],
  })),
  unplaced: [{ article: 'bag', piece: 'front', set: 2, copy: 1, mirrored: false, reason: 'no-room' }],
} as unknown as Layout;

test('when a layout is listed, copies stand in the order of cutting, then the spoiled ones, then those not laid', () => {
  expect(
    pieceList(layout).map(({ number, piece, mirrored, state, count }) => [
      number,
      piece,
      mirrored,
      state,
      count,
    ]),
  ).toEqual([
    ['1', 'patch, "small"', false, 'planned', 1],
    ['2', 'front', true, 'planned', 4],
    ['3', 'front', false, 'planned', 4],
    [undefined, 'front', false, 'spoiled', 4],
    [undefined, 'front', false, 'not laid', 4],
  ]);
});

test('when a piece is listed, its size is taken along its arrow, and the order says its leather and thickness', () => {
  const [small, own] = pieceList(layout);
  expect(small).toMatchObject({ lengthMm: 100, widthMm: 100, areaMm2: 10000 });
  expect(own).toMatchObject({
    lengthMm: 80,
    widthMm: 120,
    areaMm2: 9600,
    leather: 'body',
    colour: 'russet',
    thickness: { minMm: 2, maxMm: 2.4 },
  });
});

test('when the list is written as CSV, it reads as worked out by hand', () => {
  expect(writePieceListCsv(layout).slice(1).split('\r\n')).toEqual([
    'number,piece,article,set,copy,mirrored,count,leather,colour,thickness from (mm),thickness to (mm),length along arrow (mm),width across arrow (mm),area (cm2),state,hide,x (mm),y (mm),turn (degrees)',
    '1,"patch, ""small""",bag,1,1,no,1,,,,,100,100,100,planned,side-7,-3.25,200.5,12.25',
    '2,front,bag,1,1,yes,4,body,russet,2,2.4,80,120,96,planned,side-7,100,200.5,12.25',
    '3,front,bag,1,1,no,4,body,russet,2,2.4,80,120,96,planned,side-7,100,200.5,12.25',
    ',front,bag,1,1,no,4,body,russet,2,2.4,80,120,96,spoiled,side-7,100,200.5,12.25',
    ',front,bag,2,1,no,4,body,russet,2,2.4,80,120,96,not laid: no room,,,,',
    '',
  ]);
});

test('when the list is written as JSON, it names the order and holds the same rows', () => {
  const read = JSON.parse(writePieceListJson(layout)) as { format: string; order: unknown; pieces: unknown };
  expect(read.format).toBe('hidebound/piece-list@1');
  expect(read.order).toEqual({ name: '=Bags', version: '2', date: '2026-03-02' });
  expect(read.pieces).toEqual(pieceList(layout));
});
