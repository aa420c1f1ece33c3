import type { Point } from '@hidebound/geometry';
import * as v from 'valibot';
import { group, listOf, optional } from './group.js';
import { exactly, filePath } from './leaves.js';
import { writtenLength, writtenPositive } from './written-leaves.js';

/** What people write of the photos of a hide. Places are pixels of the photo, lengths are those of the true thing. */

export const HINTS_FORMAT = 'hidebound/photo-hints@1';

/** Wider than any photo that is read, so that a slip of the pen is caught. */
const LARGEST_PX = 100_000;

/** Decimals of a place on a photo: finer than anybody clicks. */
const PX_STEPS = 100;

const PX_WORDS = 'a place on the photo in pixels, from 0 to 100,000';
const px = v.pipe(
  v.number(PX_WORDS),
  v.minValue(0, PX_WORDS),
  v.maxValue(LARGEST_PX, PX_WORDS),
  v.transform((value) => Math.round(value * PX_STEPS) / PX_STEPS),
);

const PLACE_WORDS = 'a place on the photo as [x, y] in pixels';
const place = v.pipe(
  v.strictTuple([px, px], PLACE_WORDS),
  v.transform(([x, y]): Point => ({ x, y })),
);

const STROKE_WORDS = 'a stroke as a list of at least two places [x, y]';
const stroke = v.pipe(v.array(place, STROKE_WORDS), v.minLength(2, STROKE_WORDS));

const CORNERS_WORDS = 'four corners [x, y], clockwise from the top left one';
const corners = v.strictTuple([place, place, place, place], CORNERS_WORDS);

const rectangle = group({
  corners: [
    corners,
    'Its corners clockwise from the top left; the width runs from the first to the second one.',
  ],
  width: [writtenPositive, 'Its width, from the first corner to the second one.'],
  height: [writtenPositive, 'Its height, from the second corner to the third one.'],
});

const reading = group({
  at: [place, 'Where a mark of the rule lies on the photo.'],
  reads: [writtenLength, 'What the rule reads there.'],
});
const READINGS_WORDS = 'a list of at least two readings';
const readings = v.pipe(v.array(reading, READINGS_WORDS), v.minLength(2, READINGS_WORDS));

const rules = group({
  along: [readings, 'Readings of one rule, two at least, as far apart as it allows.'],
  across: [readings, 'Readings of the other rule, which lies at a right angle to it.'],
});

const card = group({
  corners: [
    corners,
    'Its corners clockwise from the top left one, its long side across; where the rounded corners would end if they were sharp.',
  ],
});

export const hintedPhoto = group({
  photo: [filePath, 'The photo that is spoken of; relative to this file.'],
  hide: [listOf(stroke), 'Strokes that lie on leather.'],
  floor: [listOf(stroke), 'Strokes that lie on the floor.'],
  edge: [listOf(place), 'Places that lie exactly on the edge of the hide.'],
  rectangle: [optional(rectangle), 'A rectangle of known sides that lies on the floor.'],
  rules: [optional(rules), 'Two steel rules on the floor at a right angle.'],
  card: [optional(card), 'A card of the size of bank cards (ISO/IEC 7810 ID-1) that lies on the floor.'],
});
export type WrittenPhotoHints = v.InferOutput<typeof hintedPhoto>;

const PHOTOS_WORDS = 'a list of at least one photo';

export const hintsFileSchema = group({
  format: [exactly(HINTS_FORMAT), 'What this file is.'],
  photos: [
    v.pipe(v.array(hintedPhoto, PHOTOS_WORDS), v.minLength(1, PHOTOS_WORDS)),
    'What is to be known of each photo.',
  ],
});
