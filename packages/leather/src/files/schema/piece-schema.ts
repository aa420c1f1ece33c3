import { group, listOf, optional } from './group.js';
import { angleDeg, flag, hash, lengthMm, name, positiveMm } from './leaves.js';
import { curve, point, region } from './shapes.js';

const markLine = group({
  name: [optional(name), 'What a seam refers to.'],
  curve: [curve, 'Its course.'],
});

/** The shape of a piece, seen from its seen side. */
export const piece = group({
  name: [name, 'Its name in the pattern.'],
  cut: [curve, 'The cut line, closed.'],
  cutOuts: [listOf(curve), 'Closed lines within that are cut out.'],
  punches: [
    listOf(
      group({ at: [point, 'Centre of the hole.'], diameterMm: [positiveMm, 'Diameter of the punch, mm.'] }),
    ),
    'Punched holes.',
  ],
  notches: [
    listOf(
      group({
        at: [point, 'On the edge.'],
        angleDeg: [angleDeg, 'The way into the piece, degrees clockwise from the x axis.'],
        depthMm: [lengthMm, 'How deep, mm.'],
      }),
    ),
    'Small marks on the edge.',
  ],
  stitchLines: [listOf(markLine), 'Stitch lines.'],
  foldLines: [listOf(markLine), 'Fold lines.'],
  skiveLines: [listOf(markLine), 'Lines up to which the edge is thinned.'],
  cementLines: [listOf(markLine), 'Lines up to which cement goes.'],
  direction: [
    optional(group({ from: [point, 'Start of the arrow.'], to: [point, 'Its tip.'] })),
    'The direction arrow, towards the tail.',
  ],
  face: [listOf(curve), 'Closed outlines of what is seen; none: all of it.'],
});

/** A piece made ready to be laid. */
export const layablePiece = group({
  article: [name, 'The article that it belongs to.'],
  piece: [name, 'Its name in the order.'],
  hash: [hash, 'SHA-256 of the piece’s shape.'],
  shape: [piece, 'Its lines, in its own frame: the origin is the centre of the smallest enclosing circle.'],
  region: [region, 'Contains the true cut line, allowance included, within 0.05 mm.'],
  face: [listOf(region), 'The face, clipped to the region.'],
  arrowDeg: [angleDeg, 'Direction of the arrow in its own frame, degrees clockwise from the x axis.'],
  arrowIsGuessed: [flag, 'True: no arrow was drawn; the long axis was taken.'],
});
