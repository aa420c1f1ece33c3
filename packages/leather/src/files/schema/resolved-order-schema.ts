import * as v from 'valibot';
import { ZONE_KINDS } from '../../model/hide.js';
import { LEATHER_NEEDS, TEMPERS } from '../../model/workshop-rules.js';
import { PARTS, STRAP_ENDS } from '../../model/order.js';
import { STITCH_GIVES, STITCH_TOOLS } from '../../model/stitch.js';
import { patternReading } from './pattern-reading-schema.js';
import { group, listOf, optional, requiredList } from './group.js';
import {
  angleDeg,
  count,
  countOrNone,
  day,
  exactly,
  filePath,
  flag,
  lengthMm,
  name,
  oneOf,
  positiveMm,
  priority,
  quantity,
  share,
  text,
  toleranceDeg,
  wholeNumber,
} from './leaves.js';
import { QUALITY_FIELDS, looks, money, side, thicknessRange } from './marks.js';

/** An order as a layout holds it: numbers in mm and degrees, nothing left to a default. */

export const KEEP_TOGETHER = ['hide', 'lot', 'faces on one lot', 'nothing'] as const;
export const ORDER_MODES = ['place all', 'sets', 'fill'] as const;
export const USE_FROM_ENDS = ['tail', 'head', 'backbone', 'belly'] as const;
export const DIRECTION_RULES = ['along', 'across', 'free', 'fixed'] as const;
export const AS_MANY_AS_FIT = 'as many as fit';

const strapNumbers = group({
  widthMm: [positiveMm, 'Width, mm.'],
  lengthMm: [positiveMm, 'Length over all, mm.'],
  holeEnd: [oneOf(STRAP_ENDS), 'Form of the hole end.'],
  buckleEnd: [oneOf(STRAP_ENDS), 'Form of the other end.'],
  holes: [
    optional(
      group({
        count: [count, 'How many.'],
        spacingMm: [positiveMm, 'From centre to centre, mm.'],
        diameterMm: [positiveMm, 'Diameter, mm.'],
        fromEndMm: [positiveMm, 'From the tip of the hole end to the nearest centre, mm.'],
      }),
    ),
    'A row of punched holes on the axis.',
  ],
  slot: [
    optional(
      group({
        widthMm: [positiveMm, 'Across the strap, mm.'],
        lengthMm: [positiveMm, 'Along the strap, mm.'],
        fromEndMm: [lengthMm, 'From the buckle end to the slot, mm.'],
      }),
    ),
    'The slot for a buckle’s tongue.',
  ],
});

const source = v.variant('kind', [
  group({
    kind: [exactly('pattern'), 'From a pattern file.'],
    file: [filePath, 'The pattern file.'],
    piece: [name, 'Its name in there.'],
  }),
  group({ kind: [exactly('strap'), 'A strap by numbers.'], strap: [strapNumbers, 'Its numbers.'] }),
  group({
    kind: [exactly('rectangle'), 'A rectangle by numbers.'],
    widthMm: [positiveMm, 'Width, mm.'],
    lengthMm: [positiveMm, 'Length, mm.'],
    cornerRadiusMm: [lengthMm, 'Radius of its corners, mm.'],
  }),
  group({ kind: [exactly('disc'), 'A disc by numbers.'], diameterMm: [positiveMm, 'Diameter, mm.'] }),
]);

const direction = group({
  rule: [
    oneOf(DIRECTION_RULES),
    'Along or across the direction of least stretch, free, or at a fixed angle.',
  ],
  angleDeg: [angleDeg, 'For "fixed": the arrow’s angle to the local direction, clockwise.'],
  toleranceDeg: [toleranceDeg, 'How far it may be off.'],
  halfTurn: [flag, 'True: a half turn is as good.'],
});

const seam = group({
  line: [name, 'This piece’s line.'],
  to: [group({ piece: [name, 'The other piece.'], line: [name, 'Its line.'] }), 'What it is sewn to.'],
  covers: [
    optional(oneOf(['all', 'part'])),
    'Whether it is sewn to all of the other line or to a part of it; absent: to all of it.',
  ],
});

/** How the stitch lines of a piece are sewn, nothing left open. */
export const stitchRule = group({
  pitchMm: [positiveMm, 'From hole to hole, mm.'],
  with: [oneOf(STITCH_TOOLS), 'iron: the pitch stays; awl: it may be adjusted.'],
  gives: [oneOf(STITCH_GIVES), 'With an iron: what gives where the line is no whole number of pitches.'],
  adjustShare: [share, 'With an awl: share by which the pitch may be adjusted.'],
  cornerDeg: [angleDeg, 'A turn sharper than this is a corner.'],
  endGapMm: [lengthMm, 'Least gap between an end of an open line and its hole, mm.'],
  gatherShare: [share, 'Share by which lines sewn together may differ without a warning.'],
  tailsMm: [lengthMm, 'Thread of a seam for its tails and needles, mm.'],
  thread: [optional(name), 'The thread by name; absent: the article’s first one, then the order’s.'],
  stackMm: [
    optional(positiveMm),
    'All that the needle goes through, mm; absent: it follows from the pieces.',
  ],
  leaveOut: [listOf(name), 'Names of stitch lines that get no holes.'],
});

const piece = group({
  name: [name, 'Its name within the article.'],
  leather: [name, 'The leather that it is cut from.'],
  part: [oneOf(PARTS), 'What it is.'],
  from: [source, 'Where its shape comes from.'],
  count: [count, 'Copies per set, mirrored ones included.'],
  mirrored: [countOrNone, 'Of these, so many mirrored.'],
  pair: [
    optional(
      group({
        toleranceDeg: [toleranceDeg, 'How far the angles of a pair may differ.'],
        distanceMm: [lengthMm, 'How far their distances to the backbone may differ, mm.'],
      }),
    ),
    'Plain and mirrored copy stretch alike within this.',
  ],
  looks: [
    group({ face: [looks, 'What the face needs.'], rest: [looks, 'What the rest needs.'] }),
    'Looks that it needs.',
  ],
  bearsLoad: [flag, 'True: never on weak leather.'],
  zones: [optional(requiredList(oneOf(ZONE_KINDS))), 'Zones that it may come from; absent: any.'],
  side: [side, 'The side that is seen.'],
  direction: [direction, 'How its arrow lies.'],
  arrowDeg: [optional(angleDeg), 'Arrow in the pattern’s frame, overruling the drawn one.'],
  face: [optional(name), '"all", or the name of the line that bounds the face.'],
  thickness: [optional(thicknessRange), 'Thickness that it needs.'],
  tooThick: [oneOf(['refuse', 'skive']), 'What to do with leather that is too thick.'],
  isTooled: [optional(flag), 'True: it is carved or stamped wet, and shrinks by it.'],
  layers: [count, 'Layers; each copy is cut so many times.'],
  marginMm: [optional(lengthMm), 'Room around it in its rough cut, mm.'],
  allowanceMm: [lengthMm, 'Added around the cut line, mm.'],
  seams: [listOf(seam), 'Which of its lines are sewn to which.'],
  stitch: [optional(stitchRule), 'How its stitch lines are sewn; absent: nobody gave a pitch.'],
  priority: [priority, 'Higher is laid first.'],
  inLane: [flag, 'True: cut in a lane of straps.'],
});

export const hardwareLine = group({
  name: [name, 'What it is.'],
  count: [count, 'How many.'],
  price: [optional(money), 'Price of one.'],
});

export const threadLine = group({
  name: [name, 'What it is.'],
  thicknessMm: [optional(positiveMm), 'Thickness, mm.'],
  lengthMm: [optional(quantity), 'Length that is needed, mm.'],
  price: [optional(money), 'Price.'],
});

const leatherWants = group({
  thickness: [optional(thicknessRange), 'Thickness that it wants.'],
  tannages: [optional(requiredList(name)), 'Tannages that suit.'],
  tempers: [optional(requiredList(oneOf(TEMPERS))), 'Tempers that suit.'],
  finish: [optional(name), 'How its surface is finished.'],
  zones: [optional(requiredList(oneOf(ZONE_KINDS))), 'Zones that it usually comes from.'],
  needs: [optional(requiredList(oneOf(LEATHER_NEEDS))), 'What the leather has to do.'],
});

const article = group({
  name: [name, 'Its name within the order.'],
  goods: [name, 'What is made.'],
  wants: [optional(leatherWants), 'What its leather has to be, where the table of goods does not fit.'],
  sets: [
    v.union([count, exactly(AS_MANY_AS_FIT)], 'a whole number from 1 to 10,000, or "as many as fit"'),
    'How many sets.',
  ],
  for: [optional(name), 'For whom.'],
  value: [quantity, 'What a set is worth against the others.'],
  priority: [priority, 'Higher is laid first.'],
  keepTogether: [oneOf(KEEP_TOGETHER), 'What the pieces of a set must share.'],
  pieces: [requiredList(piece), 'Its pieces.'],
  beside: [
    listOf(v.strictTuple([name, name], 'a pair of piece names')),
    'Faces that end up side by side: pairs of piece names.',
  ],
  hardware: [listOf(hardwareLine), 'Hardware per set.'],
  threads: [listOf(threadLine), 'Thread per set.'],
  hours: [optional(quantity), 'Hours of work per set.'],
});

const preparation = group({
  name: [name, 'Its name; pieces of one preparation are prepared together.'],
  condition: [optional(text), 'How the leather is conditioned.'],
  dye: [optional(name), 'The dye.'],
  dyeBase: [optional(name), 'What the dye is made up with: spirit, oil, water, pigment.'],
  coats: [optional(wholeNumber(0, 100)), 'Coats of dye.'],
  thinnerParts: [optional(quantity), 'Parts of thinner to one part of dye.'],
  thinner: [optional(name), 'The thinner that the dye’s own label names.'],
  resist: [optional(name), 'What keeps dye out of places, put on before the finish.'],
  finish: [optional(name), 'The finish.'],
  finishCoats: [optional(wholeNumber(0, 100)), 'Coats of finish.'],
  bothSides: [flag, 'True: both sides are treated.'],
});

const leather = group({
  name: [name, 'Its role in the order: body, strap, lining.'],
  ...QUALITY_FIELDS,
  thickness: [optional(thicknessRange), 'Thickness.'],
  hides: [listOf(filePath), 'Hide files in the order in which they are to be used.'],
  preparation: [optional(preparation), 'How it is prepared.'],
});

export const cutting = group({
  method: [name, 'The cutting method.'],
  gapMm: [lengthMm, 'Between two cut lines, mm.'],
  edgeMm: [lengthMm, 'To the outline and the openings, mm.'],
  voidMm: [lengthMm, 'To places that are never to be used, mm.'],
  kerfMm: [lengthMm, 'Width of the cut, mm.'],
});

export const resolvedOrder = group({
  name: [name, 'The order’s name.'],
  version: [name, 'Its version.'],
  date: [day, 'Its day.'],
  articles: [requiredList(article), 'What is to be made.'],
  leathers: [requiredList(leather), 'The leathers and their hides.'],
  patterns: [listOf(patternReading), 'How pattern files are read.'],
  table: [
    optional(group({ widthMm: [positiveMm, 'Width, mm.'], lengthMm: [positiveMm, 'Length, mm.'] })),
    'The cutting table.',
  ],
  useFrom: [
    v.union([oneOf(USE_FROM_ENDS), angleDeg], '"tail", "head", "backbone", "belly" or an angle in degrees'),
    'The end from which a hide is used up; a number is the angle of the way into the hide.',
  ],
  mode: [oneOf(ORDER_MODES), 'Place all, whole sets, or fill by value.'],
  cutting: [cutting, 'How it is cut.'],
  keepMm: [
    v.strictTuple([positiveMm, positiveMm], 'two sides as [mm, mm]'),
    'The smallest leftover worth keeping.',
  ],
  threads: [listOf(threadLine), 'Thread for the whole order.'],
  hardware: [listOf(hardwareLine), 'Hardware for the whole order.'],
  hours: [optional(quantity), 'Hours of work beyond the sets’ own.'],
  notes: [optional(text), 'Free words.'],
});
