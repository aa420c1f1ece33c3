/** Double lattices: of a convex piece, and of one with hollows. */
import { ringBox } from '@hidebound/geometry';
import { densestDoubleLattice } from '../../../packages/geometry/dist/lattice/double-lattice.js';
import { repeatsOf } from '../../../packages/geometry/dist/lattice/repeats-of.js';
import { simplifyGrowing } from '../../../packages/geometry/dist/shape/simplify.js';
import { LOOK, element, pageOfPanels, region, viewOf } from './drawing.mjs';

const PANEL_PX = 330;
const PANEL_HEIGHT = 250;
/** Lattice steps each way: more than fill the panel. */
const STEPS = 12;
/** What is not seen: outlines may be simpler by this. */
const SIMPLER_PX = 0.15;
const RADIUS_MM = 50;

const pentagon = Array.from({ length: 5 }, (_, k) => {
  const turn = (2 * Math.PI * k) / 5;
  return { x: RADIUS_MM * Math.sin(turn), y: -RADIUS_MM * Math.cos(turn) };
});

export function latticePicture(hollow) {
  const convex = densestDoubleLattice(pentagon);
  const [found] = repeatsOf(hollow.region, { gap: 0, mayHalfTurn: true });
  const title = 'Two double lattices';
  return pageOfPanels(
    title,
    [
      panel('first', pentagon, convex, 8 * RADIUS_MM, [
        `Regular pentagon: ${percent(convex)}`,
        'the densest packing there is',
      ]),
      panel('second', hollow.region.outer, found, 2.2 * sizeOf(hollow.region.outer), [
        `${hollow.name}: ${percent(found)}`,
        'the densest of many starts, tightened',
      ]),
    ],
    PANEL_PX,
  );
}

const percent = ({ density }) => `${(100 * density).toFixed(2)} %`;

function sizeOf(ring) {
  const { minX, minY, maxX, maxY } = ringBox(ring);
  return Math.max(maxX - minX, maxY - minY);
}

function panel(id, ring, { u, v, members }, widthMm, lines) {
  const heightMm = (widthMm * PANEL_HEIGHT) / PANEL_PX;
  // The cell lies in the middle.
  const middle = { x: members[0].x + (u.x + v.x) / 2, y: members[0].y + (u.y + v.y) / 2 };
  const box = {
    minX: middle.x - widthMm / 2,
    minY: middle.y - heightMm / 2,
    maxX: middle.x + widthMm / 2,
    maxY: middle.y + heightMm / 2,
  };
  return {
    height: PANEL_HEIGHT,
    lines,
    draw: (left, top) => {
      const view = viewOf(box, PANEL_PX, left, top);
      const frame = { x: left, y: top, width: PANEL_PX, height: PANEL_HEIGHT, rx: 4 };
      const simple = simplifyGrowing(ring, SIMPLER_PX / view.scale);
      const pieces = copies(simple, u, v, members)
        .filter((one) => isSeen(one.ring, box))
        .map(({ ring: outer, isTurned }) =>
          region(
            view,
            { outer, openings: [] },
            {
              fill: isTurned ? LOOK.half : LOOK.piece,
              stroke: LOOK.pieceLine,
              'stroke-width': 1,
            },
          ),
        );
      return [
        element('clipPath', { id }, element('rect', frame)),
        element(
          'g',
          { 'clip-path': `url(#${id})` },
          [element('rect', { ...frame, fill: LOOK.leather }), ...pieces, cell(view, u, v, members)].join(''),
        ),
      ].join('');
    },
  };
}

function copies(ring, u, v, members) {
  const all = [];
  for (let i = -STEPS; i <= STEPS; i++) {
    for (let j = -STEPS; j <= STEPS; j++) {
      for (const { x, y, rotationDeg } of members) {
        const sign = rotationDeg === 180 ? -1 : 1;
        const at = { x: x + i * u.x + j * v.x, y: y + i * u.y + j * v.y };
        all.push({
          ring: ring.map((p) => ({ x: at.x + sign * p.x, y: at.y + sign * p.y })),
          isTurned: sign < 0,
        });
      }
    }
  }
  return all;
}

function isSeen(ring, box) {
  const own = ringBox(ring);
  return own.minX < box.maxX && own.maxX > box.minX && own.minY < box.maxY && own.maxY > box.minY;
}

/** The cell that is repeated: its sides are the lattice vectors. */
function cell(view, u, v, members) {
  const from = { x: members[0].x, y: members[0].y };
  const outer = [
    from,
    { x: from.x + u.x, y: from.y + u.y },
    { x: from.x + u.x + v.x, y: from.y + u.y + v.y },
    { x: from.x + v.x, y: from.y + v.y },
  ];
  return region(
    view,
    { outer, openings: [] },
    { fill: LOOK.circle, 'fill-opacity': 0.12, stroke: LOOK.circle, 'stroke-width': 2 },
  );
}
