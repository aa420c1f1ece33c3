import * as v from 'valibot';
import { ZONE_KINDS } from '../../model/hide.js';
import { PARTS, STRAP_ENDS } from '../../model/order.js';
import type { DirectionWish, OrderPiece, PairWish, PieceSource, Seam } from '../../model/order.js';
import { leatherError } from '../../words/refuse.js';
import { listWords, quoteValue } from '../../words/sentence.js';
import { definedOnly } from '../defined-only.js';
import { DEFAULT_PAIR, DEFAULT_PRIORITY, defaultDirection } from '../order-defaults.js';
import { group, listOf, listOfAtLeast, optional } from './group.js';
import { count, countOrNone, filePath, flag, name, oneOf, priority } from './leaves.js';
import { looks, side } from './marks.js';
import { readWith } from './problem.js';
import { DIRECTION_RULES } from './resolved-order-schema.js';
import {
  writtenAngle,
  writtenLength,
  writtenPositive,
  writtenThickness,
  writtenTolerance,
} from './written-leaves.js';
import { writtenStitch } from './written-stitch.js';

/** A piece as people write it in an order or article file. */

const strap = group({
  width: [writtenPositive, 'Width.'],
  length: [writtenPositive, 'Length over all.'],
  holeEnd: [v.optional(oneOf(STRAP_ENDS), 'square'), 'Form of the hole end.'],
  buckleEnd: [v.optional(oneOf(STRAP_ENDS), 'square'), 'Form of the other end.'],
  holes: [
    optional(
      group({
        count: [count, 'How many.'],
        spacing: [writtenPositive, 'From centre to centre.'],
        diameter: [writtenPositive, 'Diameter.'],
        fromEnd: [writtenPositive, 'From the tip of the hole end to the nearest centre.'],
      }),
    ),
    'A row of punched holes on the axis.',
  ],
  slot: [
    optional(
      group({
        width: [writtenPositive, 'Across the strap.'],
        length: [writtenPositive, 'Along the strap.'],
        fromEnd: [writtenLength, 'From the buckle end to the slot.'],
      }),
    ),
    'The slot for a buckle’s tongue.',
  ],
});

const rectangle = group({
  width: [writtenPositive, 'Width.'],
  length: [writtenPositive, 'Length.'],
  corners: [v.optional(writtenLength, 0), 'Radius of its corners.'],
});

const disc = group({ diameter: [writtenPositive, 'Diameter.'] });

const DIRECTION_WORDS = '"along", "across", "free", or a group with rule, tolerance, halfTurn and angle';
const directionGroup = group({
  rule: [
    oneOf(DIRECTION_RULES),
    'Along or across the direction of least stretch, free, or at a fixed angle.',
  ],
  tolerance: [optional(writtenTolerance), 'How far it may be off; 10 degrees along and across, 5 fixed.'],
  halfTurn: [optional(flag), 'Whether a half turn is as good; yes unless fixed.'],
  angle: [optional(writtenAngle), 'For "fixed": the arrow’s angle to the local direction, clockwise.'],
});

/** "along", or the group. */
export const writtenDirection = v.pipe(
  v.union([oneOf(['along', 'across', 'free']), directionGroup], DIRECTION_WORDS),
  readWith(readDirection),
);

function readDirection(
  written: 'along' | 'across' | 'free' | v.InferOutput<typeof directionGroup>,
): DirectionWish {
  if (typeof written === 'string') return defaultDirection(written);
  if (written.rule === 'fixed' && written.angle === undefined) throw leatherError('fixed-needs-angle', {});
  const usual = defaultDirection(written.rule);
  return {
    rule: written.rule,
    angleDeg: written.angle ?? usual.angleDeg,
    toleranceDeg: written.tolerance ?? usual.toleranceDeg,
    halfTurn: written.halfTurn ?? usual.halfTurn,
  };
}

const pairGroup = group({
  tolerance: [optional(writtenTolerance), 'How far the two angles may differ; 10 degrees.'],
  distance: [optional(writtenLength), 'How far the two distances to the backbone may differ; 150 mm.'],
});
const writtenPair = v.pipe(
  v.union([oneOf(['alike']), pairGroup], '"alike", or a group with tolerance and distance'),
  v.transform((written): PairWish => {
    if (written === 'alike') return DEFAULT_PAIR;
    return {
      toleranceDeg: written.tolerance ?? DEFAULT_PAIR.toleranceDeg,
      distanceMm: written.distance ?? DEFAULT_PAIR.distanceMm,
    };
  }),
);

const SEAM_WORDS = 'the other piece and its line as "piece/line"';
const writtenSeam = v.pipe(
  group({
    line: [name, 'This piece’s line.'],
    to: [v.string(SEAM_WORDS), 'The other piece and its line, as "piece/line".'],
    covers: [
      optional(oneOf(['all', 'part'])),
      'Whether it is sewn to all of the other line or to a part of it; all of it unless written.',
    ],
  }),
  readWith(readSeam),
);

function readSeam(written: { readonly line: string; readonly to: string } & Pick<Seam, 'covers'>): Seam {
  const slash = written.to.indexOf('/');
  const piece = written.to.slice(0, slash);
  const line = written.to.slice(slash + 1);
  if (slash < 1 || line === '') throw leatherError('seam-target', { found: quoteValue(written.to) });
  return definedOnly({ line: written.line, to: { piece, line }, covers: written.covers });
}

/** Looks that a piece needs; what is absent comes from its part. */
const partialLooks = group({
  face: [optional(looks), 'What the face needs: A, B or C.'],
  rest: [optional(looks), 'What the rest needs.'],
});

const pieceGroup = group({
  name: [name, 'Its name within the article.'],
  leather: [name, 'The leather that it is cut from.'],
  part: [oneOf(PARTS), 'What it is; fills in all that is left unsaid.'],
  pattern: [optional(filePath), 'The pattern file that it comes from …'],
  piece: [optional(name), '… and its name in there; the same name, unless written.'],
  strap: [optional(strap), 'Or a strap by numbers,'],
  rectangle: [optional(rectangle), 'or a rectangle,'],
  disc: [optional(disc), 'or a disc.'],
  count: [v.optional(count, 1), 'Copies per set, mirrored ones included.'],
  mirrored: [v.optional(countOrNone, 0), 'Of these, so many mirrored.'],
  pair: [optional(writtenPair), 'Plain and mirrored copy are to stretch alike.'],
  looks: [optional(partialLooks), 'Looks that it needs.'],
  load: [optional(flag), 'Whether it bears load.'],
  zones: [optional(listOfAtLeast(1, oneOf(ZONE_KINDS))), 'Zones that it may come from.'],
  side: [optional(side), 'The side that is seen.'],
  direction: [optional(writtenDirection), 'How its arrow lies.'],
  arrow: [optional(writtenAngle), 'Arrow in the pattern’s frame, clockwise from its x axis.'],
  face: [optional(name), '"all", or the name of the line that bounds the face.'],
  thickness: [optional(writtenThickness), 'Thickness that it needs.'],
  tooThick: [optional(oneOf(['refuse', 'skive'])), 'What to do with leather that is too thick.'],
  tooled: [optional(flag), 'Whether it is carved or stamped wet, and shrinks by it.'],
  layers: [v.optional(count, 1), 'Layers; each copy is cut so many times.'],
  margin: [optional(writtenLength), 'Room around it in its rough cut.'],
  allowance: [v.optional(writtenLength, 0), 'Added around the cut line; counts as rest, not as face.'],
  seams: [listOf(writtenSeam), 'Which of its lines are sewn to which.'],
  stitch: [optional(writtenStitch), 'How its stitch lines are sewn, where that differs from its article.'],
  priority: [v.optional(priority, DEFAULT_PRIORITY), 'Higher is laid first.'],
  lane: [v.optional(flag, false), 'Whether it is cut in a lane of straps.'],
});

export const writtenPiece = v.pipe(pieceGroup, readWith(readPiece));

type WrittenPiece = v.InferOutput<typeof pieceGroup>;

function readPiece(written: WrittenPiece): OrderPiece {
  const piece = quoteValue(written.name);
  const { count: copies, mirrored } = written;
  if (mirrored > copies) throw leatherError('piece-mirrored-count', { piece, mirrored, count: copies });
  return definedOnly({
    name: written.name,
    leather: written.leather,
    part: written.part,
    from: readSource(written),
    count: copies,
    mirrored,
    pair: written.pair,
    looks: written.looks,
    bearsLoad: written.load,
    zones: written.zones,
    side: written.side,
    direction: written.direction,
    arrowDeg: written.arrow,
    face: written.face,
    thickness: written.thickness,
    tooThick: written.tooThick,
    isTooled: written.tooled === true ? true : undefined,
    layers: written.layers,
    marginMm: written.margin,
    allowanceMm: written.allowance,
    seams: written.seams,
    stitch: written.stitch,
    priority: written.priority,
    inLane: written.lane,
  });
}

const SOURCES = ['pattern', 'strap', 'rectangle', 'disc'] as const;

function readSource(written: WrittenPiece): PieceSource {
  const piece = quoteValue(written.name);
  const given = SOURCES.filter((key) => written[key] !== undefined);
  if (given.length !== 1) {
    const found = given.length === 0 ? 'no shape' : `several shapes (${listWords(given, 'and')})`;
    throw leatherError('piece-source', { piece, found });
  }
  if (written.pattern !== undefined) {
    return { kind: 'pattern', file: written.pattern, piece: written.piece ?? written.name };
  }
  if (written.piece !== undefined) throw leatherError('piece-without-pattern', { piece });
  if (written.strap !== undefined) return { kind: 'strap', strap: readStrap(written.strap, piece) };
  if (written.disc !== undefined) return { kind: 'disc', diameterMm: written.disc.diameter };
  const { width, length, corners } = written.rectangle!;
  return { kind: 'rectangle', widthMm: width, lengthMm: length, cornerRadiusMm: corners };
}

function readStrap(
  written: v.InferOutput<typeof strap>,
  piece: string,
): Extract<PieceSource, { kind: 'strap' }>['strap'] {
  const { holes, slot } = written;
  if (slot !== undefined && slot.fromEnd + slot.length >= written.length) {
    throw leatherError('strap-does-not-fit', { piece, what: 'its slot ends beyond the strap' });
  }
  if (holes !== undefined && holes.fromEnd + (holes.count - 1) * holes.spacing >= written.length) {
    throw leatherError('strap-does-not-fit', { piece, what: 'its row of holes is longer than the strap' });
  }
  return definedOnly({
    widthMm: written.width,
    lengthMm: written.length,
    holeEnd: written.holeEnd,
    buckleEnd: written.buckleEnd,
    holes: holes && {
      count: holes.count,
      spacingMm: holes.spacing,
      diameterMm: holes.diameter,
      fromEndMm: holes.fromEnd,
    },
    slot: slot && { widthMm: slot.width, lengthMm: slot.length, fromEndMm: slot.fromEnd },
  });
}
