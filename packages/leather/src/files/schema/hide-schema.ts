import * as v from 'valibot';
import { FLAW_KINDS, HIDE_CUTS, HIDE_GUESSES, ZONE_KINDS } from '../../model/hide.js';
import { group, listOf, optional } from './group.js';
import {
  areaMm2,
  exactly,
  filePath,
  flag,
  lengthMm,
  name,
  oneOf,
  positiveMm,
  pxPerMm,
  share,
  text,
  thicknessMm,
} from './leaves.js';
import { MONEY_FIELDS, QUALITY_FIELDS, partialEffect, side, thicknessRange } from './marks.js';
import { curve, point, polyline } from './shapes.js';

const reading = group({
  at: [point, 'Where it was measured.'],
  mm: [thicknessMm, 'The reading, mm.'],
});

const leather = group({
  ...QUALITY_FIELDS,
  thickness: [optional(thicknessRange), 'Thickness from thinnest to thickest, as sold or measured.'],
  readings: [listOf(reading), 'Thickness readings at places.'],
});

const area = group({
  measuredMm2: [optional(areaMm2), 'Area within the outline as measured by whoever traced it, mm².'],
  invoicedMm2: [optional(areaMm2), 'Area as written on the hide or the invoice, mm².'],
});

const price = group({
  ...MONEY_FIELDS,
  per: [oneOf(['hide', 'ft2', 'm2', 'dm2']), 'What the sum is for: the hide, or so much area.'],
  of: [oneOf(['invoiced', 'measured']), 'Of which area, where it is a price per area.'],
});

const zone = group({
  id: [name, 'Its own name within the hide.'],
  kind: [oneOf(ZONE_KINDS), 'Which zone it is; brings looks and strength with it.'],
  outline: [curve, 'Its edge.'],
  effect: [optional(partialEffect), 'What is different from its kind.'],
});

const flawShape = v.variant('kind', [
  group({
    kind: [exactly('point'), 'A spot.'],
    at: [point, 'Its centre.'],
    radiusMm: [positiveMm, 'Its radius, mm.'],
  }),
  group({
    kind: [exactly('line'), 'A long mark.'],
    line: [polyline, 'Its course.'],
    widthMm: [positiveMm, 'Its width, mm.'],
  }),
  group({
    kind: [exactly('area'), 'A patch.'],
    outline: [curve, 'Its edge.'],
  }),
]);

const FLAW_FIELDS = {
  id: [name, 'Its own name within the hide.'],
  kind: [
    optional(oneOf(FLAW_KINDS)),
    'What it is; brings an effect with it. Without one, the effect is written out.',
  ],
  side: [v.optional(side, 'grain'), 'The side that it is on.'],
  depth: [optional(share), 'How deep it goes, as a share of the thickness; absent: not known.'],
  shape: [flawShape, 'Where it is: a point with a radius, a line with a width, or an area.'],
  effect: [optional(partialEffect), 'What is different from its kind.'],
} as const;

const flaw = group(FLAW_FIELDS);
const candidate = group({
  ...FLAW_FIELDS,
  confidence: [share, 'How sure the finder was, 0 to 1.'],
});

const unsureEdge = group({
  line: [polyline, 'The stretch of the outline.'],
  offByMm: [lengthMm, 'How far off it can be, mm.'],
});

const errorAt = group({ at: [point, 'Where.'], mm: [lengthMm, 'How far off a mark can be there, mm.'] });

const photo = group({
  file: [filePath, 'The straightened picture, seen from the grain side; relative to the hide file.'],
  pxPerMm: [pxPerMm, 'Pixels per mm of the straightened picture.'],
  origin: [point, 'Where on the hide the picture’s top left corner lies.'],
  scaledBy: [name, 'How the scale was found, in words.'],
  errorMm: [lengthMm, 'How far off a mark can be, everywhere at least, mm.'],
  errorsAt: [listOf(errorAt), 'How far off at places where it is known better; the nearest one counts.'],
  scaleErrorShare: [optional(share), 'By which share the scale can be wrong; 0.003 is 0.3 %.'],
  areaErrorShare: [optional(share), 'By which share the area can be wrong.'],
  sideUp: [optional(side), 'Which side lay upwards in the photo; a flesh side’s picture is mirrored.'],
  takenFrom: [optional(listOf(filePath)), 'The photos as they were taken.'],
  raking: [optional(listOf(filePath)), 'Of these, the ones with light from low at one side.'],
  otherSide: [optional(listOf(filePath)), 'Of these, the ones that show the other side of the hide.'],
  isMoved: [optional(flag), 'Whether the leather was dragged along between the photos.'],
  hints: [optional(filePath), 'The file of hints that was used.'],
  hideStrokes: [listOf(polyline), 'Strokes given as hints: this is hide.'],
  floorStrokes: [listOf(polyline), 'Strokes given as hints: this is floor.'],
});

/** A hide without its format line, as a layout holds its offcuts too. */
export const HIDE_FIELDS = {
  id: [name, 'The hide’s own name, which layouts and the stock journal use.'],
  parent: [optional(name), 'Id of the hide that this one was cut from.'],
  cut: [oneOf(HIDE_CUTS), 'Which cut of the animal it is.'],
  outline: [curve, 'Its edge, closed, once around without crossing itself.'],
  openings: [listOf(curve), 'Holes right through, each closed.'],
  backbone: [optional(polyline), 'The line from head to tail; a belly has none.'],
  tightness: [listOf(polyline), 'Lines drawn along the direction in which the leather stretches least.'],
  zones: [listOf(zone), 'Regions with looks and strength of their own.'],
  flaws: [listOf(flaw), 'Marks on the hide.'],
  candidates: [listOf(candidate), 'Flaws found in a photo and not yet confirmed.'],
  unsureEdges: [listOf(unsureEdge), 'Stretches of the outline whose place is not certain.'],
  leather: [v.optional(leather, {}), 'What leather it is.'],
  area: [v.optional(area, {}), 'Its area, as measured and as invoiced.'],
  price: [optional(price), 'What it cost.'],
  lot: [optional(name), 'Hides of one lot match in shade; without one, a hide is its own lot.'],
  state: [v.optional(oneOf(['on hand', 'reserved', 'cut']), 'on hand'), 'Whether it is there to be cut.'],
  photo: [optional(photo), 'The photo that it was traced from.'],
  guessed: [
    optional(listOf(oneOf(HIDE_GUESSES))),
    'What was guessed from the photo and nobody has confirmed yet.',
  ],
  storedAt: [optional(name), 'Where it lies in the workshop.'],
  notes: [optional(text), 'Free words.'],
} as const;

export const hideBody = group(HIDE_FIELDS);
