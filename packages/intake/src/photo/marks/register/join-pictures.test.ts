import { composeAffine, invertAffine, rotationDeg, translation } from '@hidebound/geometry';
import type { Affine, Point } from '@hidebound/geometry';
import { expect, test } from 'vitest';
import { toFloor, toPicture } from '../../straight/straight-picture.js';
import type { StraightPicture } from '../../straight/straight-picture.js';
import { loadVision } from '../../vision/load-vision.js';
import { joinPictures } from './join-pictures.js';

// The leather's pattern is a formula, so every place's colour in the joined picture is known.
const toneAt = ({ x, y }: Point): number => 120 + 60 * Math.sin(x / 23) + 50 * Math.cos(y / 31 + x / 90);

/** What a photo shows of the pattern after it was moved: floor places from `left` to `left + 300` mm. */
function pictureOf(motion: Affine, left: number, seenFrom = 0): StraightPicture {
  const [width, height] = [600, 400];
  const origin = { x: left, y: -10 };
  const back = invertAffine(motion);
  const rgb = new Uint8Array(3 * width * height);
  const seen = new Uint8Array(width * height);
  for (let j = 0; j < height; j++) {
    for (let i = 0; i < width; i++) {
      const { x, y } = toFloor({ origin, pxPerMm: 2 }, { x: i, y: j });
      const tone = toneAt({ x: back.a * x + back.c * y + back.e, y: back.b * x + back.d * y + back.f });
      rgb.fill(Math.round(tone), 3 * (j * width + i), 3 * (j * width + i) + 3);
      if (i >= seenFrom) seen[j * width + i] = 255;
    }
  }
  return { width, height, rgb, pxPerMm: 2, origin, seen };
}

const toneOf = (picture: StraightPicture, at: Point): number | undefined => {
  const { x, y } = toPicture(picture, at);
  const k = Math.round(y) * picture.width + Math.round(x);
  return picture.seen[k] === 255 ? picture.rgb[3 * k] : undefined;
};

test('when two photos of leather that was moved are joined, every place that either shows has its colour', async () => {
  const { vision } = await loadVision();
  const dragged = composeAffine(translation(-190, 12), rotationDeg(5));
  const first = pictureOf(translation(0, 0), 0);
  const second = pictureOf(dragged, 0);
  const joined = joinPictures(
    [{ picture: first }, { picture: second }],
    [translation(0, 0), invertAffine(dragged)],
    vision,
  );
  for (const at of [
    { x: 30, y: 60 },
    { x: 200, y: 90 },
    { x: 290, y: 120 },
    { x: 400, y: 60 },
    { x: 450, y: 110 },
  ]) {
    // Half a pixel of 0.5 mm changes the pattern by 1 at most; joining and rounding by a little more.
    expect(Math.abs(toneOf(joined, at)! - toneAt(at)), `${at.x}, ${at.y}`).toBeLessThan(4);
  }
  expect(toneOf(joined, { x: 480, y: 180 })).toBeUndefined();
});

test('when a sheet covers the leather in one photo, the place is taken from the other one', async () => {
  const { vision } = await loadVision();
  const first = pictureOf(translation(0, 0), 0);
  const sheet = [
    { x: 100, y: 40 },
    { x: 160, y: 40 },
    { x: 160, y: 100 },
    { x: 100, y: 100 },
  ];
  const painted = { ...first, rgb: first.rgb.slice() };
  for (let j = 100; j < 220; j++) painted.rgb.fill(255, 3 * (j * 600 + 200), 3 * (j * 600 + 320));
  const second = pictureOf(translation(0, 0), 20);
  const still = [translation(0, 0), translation(0, 0)];
  const joined = joinPictures([{ picture: painted, covered: [sheet] }, { picture: second }], still, vision);
  expect(Math.abs(toneOf(joined, { x: 130, y: 70 })! - toneAt({ x: 130, y: 70 }))).toBeLessThan(4);
});
