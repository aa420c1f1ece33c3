import { rotationDeg, MIRROR_X, applyAffine, composeAffine } from '@hidebound/geometry';
import { cardPoints } from '@hidebound/leather';
import { expect, test } from 'vitest';
import { isInside } from '../label/label-box.js';
import { SAMPLE_KINDS, samplePiece } from '../sample/sample-pieces.js';
import { cardPointLines } from './card-points.js';

const pieces = SAMPLE_KINDS.map(samplePiece);

test.each([
  ['plain', rotationDeg(0)],
  ['turned', rotationDeg(35)],
  ['mirrored', composeAffine(rotationDeg(90), MIRROR_X)],
])('when a card is drawn %s, its marks have their tips in A and B and lie within the piece', (_, toScene) => {
  let marked = 0;
  for (const piece of pieces) {
    const lines = cardPointLines(piece, undefined, toScene);
    if (lines.length === 0) continue;
    marked++;
    const tips = lines
      .filter(({ curve }) => curve.segments.length === 2)
      .map(({ curve }) => curve.segments[0]!.to);
    const { a, b } = cardPoints(piece);
    for (const own of [a, b]) {
      const at = applyAffine(toScene, own);
      expect(
        tips.some((tip) => Math.abs(tip.x - at.x) + Math.abs(tip.y - at.y) < 1e-9),
        piece.piece,
      ).toBe(true);
    }
    const ends = lines
      .filter(({ curve }) => curve.segments.length === 2)
      .flatMap(({ curve }) => [curve.start]);
    const region = {
      outer: piece.region.outer.map((p) => applyAffine(toScene, p)),
      openings: [],
    };
    for (const end of ends) expect(isInside(end, region), piece.piece).toBe(true);
  }
  expect(marked).toBeGreaterThan(3);
});

test('when a piece is cut by its size, its card has no points', () => {
  const simple = pieces.filter(({ piece }) => piece.includes('disc'));
  expect(simple.length).toBeGreaterThan(0);
  for (const piece of simple) expect(cardPointLines(piece, undefined, rotationDeg(0))).toEqual([]);
});
