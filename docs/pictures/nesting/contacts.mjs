/** Contacts before and after they are made exact, with one of them under a glass. */
import { LOOK, element, pageOfPanels, ringPath, viewOf } from './drawing.mjs';
import { WIDTH_MM, drawStrip } from './strip-scene.mjs';

const PANEL_PX = 300;
const GLASS_PX = 128;
/** Half of what is seen under the glass, mm. */
const GLASS_MM = 0.25;
/** Corners nearer than this to another outline are looked at, mm. */
const NEAR_MM = 0.1;
/** As near as this is a touch; as deep as this is an overlap, mm. */
const TOUCH_MM = 0.001;

/** Corners near another outline: depth is positive inside. */
function nearCorners(rings) {
  const found = [];
  rings.forEach((ring, i) =>
    rings.forEach((other, j) => {
      if (i === j) return;
      for (const corner of ring) {
        const distance = distanceTo(other, corner);
        if (distance > NEAR_MM) continue;
        found.push({ ...corner, i, j, depth: isIn(other, corner) ? distance : -distance });
      }
    }),
  );
  return found;
}

function distanceTo(ring, { x, y }) {
  return Math.min(
    ...ring.map((a, k) => {
      const b = ring[(k + 1) % ring.length];
      const [dx, dy] = [b.x - a.x, b.y - a.y];
      const t = Math.min(1, Math.max(0, ((x - a.x) * dx + (y - a.y) * dy) / (dx * dx + dy * dy)));
      return Math.hypot(a.x + t * dx - x, a.y + t * dy - y);
    }),
  );
}

function isIn(ring, { x, y }) {
  return ring.reduce((inside, a, k) => {
    const b = ring[(k + 1) % ring.length];
    const crosses = a.y > y !== b.y > y && x < ((b.x - a.x) * (y - a.y)) / (b.y - a.y) + a.x;
    return crosses ? !inside : inside;
  }, false);
}

const pairsOf = (corners) => new Set(corners.map(({ i, j }) => `${Math.min(i, j)}/${Math.max(i, j)}`)).size;

export function contactsPicture(before, after) {
  const corners = nearCorners(before.rings);
  const deep = corners.filter(({ depth }) => depth > TOUCH_MM);
  const later = nearCorners(after.rings);
  const touching = later.filter(({ depth }) => Math.abs(depth) <= TOUCH_MM);
  const stillDeep = later.filter(({ depth }) => depth > TOUCH_MM);
  const worst = deep.reduce((most, one) => (one.depth > most.depth ? one : most));
  // The same corner of the same piece, where it lies afterwards.
  const at = before.rings[worst.i].findIndex(({ x, y }) => x === worst.x && y === worst.y);
  const there = after.rings[worst.i][at];
  const um = (mm) => `${Math.round(1000 * mm)} µm`;
  const length = (mm) => `${mm.toFixed(2)} mm`;
  return pageOfPanels(
    'Contacts before and after settling',
    [
      panel(before, deep, LOOK.bad, worst, [
        `Separated: ${length(before.limit)}`,
        `${pairsOf(deep)} pairs overlap, by up to ${um(worst.depth)}`,
      ]),
      panel(after, touching, LOOK.good, there, [
        `Settled and drawn together: ${length(after.limit)}`,
        `${pairsOf(touching)} pairs touch within 1 µm, ${pairsOf(stillDeep)} overlap`,
      ]),
    ],
    PANEL_PX + GLASS_PX / 2,
  );
}

function panel({ rings, limit }, marks, colour, place, lines) {
  const box = { minX: 0, maxX: limit, minY: 0, maxY: WIDTH_MM };
  return {
    height: viewOf(box, PANEL_PX).height + GLASS_PX / 3,
    lines,
    draw: (left, top) => {
      const view = viewOf(box, PANEL_PX, left, top);
      const dots = marks.map(({ x, y }) =>
        element('circle', { cx: view.x(x), cy: view.y(y), r: 2.6, fill: colour }),
      );
      return drawStrip(view, rings, limit) + dots.join('') + glass(view, rings, place, colour);
    },
  };
}

/** What lies at the place, enlarged, at the panel's lower right corner. */
function glass(view, rings, place, colour) {
  const r = GLASS_PX / 2;
  const [cx, cy] = [view.left + view.width, view.top + view.height - r / 3];
  const lens = viewOf(
    {
      minX: place.x - GLASS_MM,
      maxX: place.x + GLASS_MM,
      minY: place.y - GLASS_MM,
      maxY: place.y + GLASS_MM,
    },
    GLASS_PX,
    cx - r,
    cy - r,
  );
  const id = `glass${Math.round(view.left)}`;
  const near = rings.filter((ring) => distanceTo(ring, place) < 2 * GLASS_MM || isIn(ring, place));
  return [
    element('clipPath', { id }, element('circle', { cx, cy, r })),
    element('path', {
      d: `M${view.x(place.x).toFixed(1)} ${view.y(place.y).toFixed(1)}L${cx.toFixed(1)} ${cy.toFixed(1)}`,
      stroke: colour,
      'stroke-width': 0.8,
    }),
    element('circle', {
      cx: view.x(place.x),
      cy: view.y(place.y),
      r: 5,
      fill: 'none',
      stroke: colour,
      'stroke-width': 1.5,
    }),
    element('circle', { cx, cy, r, fill: LOOK.leather }),
    element(
      'g',
      { 'clip-path': `url(#${id})` },
      near
        .map((ring) =>
          element('path', {
            d: ringPath(lens, [ring]),
            fill: LOOK.piece,
            'fill-opacity': 0.6,
            stroke: LOOK.pieceLine,
            'stroke-width': 1.2,
          }),
        )
        .join(''),
    ),
    element('circle', { cx, cy, r, fill: 'none', stroke: colour, 'stroke-width': 2 }),
    element('path', {
      d: `M${(cx - lens.scale * 0.05).toFixed(1)} ${(cy + r - 16).toFixed(1)}h${(lens.scale * 0.1).toFixed(1)}`,
      stroke: LOOK.ink,
      'stroke-width': 2,
    }),
    element('text', { x: cx, y: cy + r - 20, 'font-size': 10, 'text-anchor': 'middle' }, '0.1 mm'),
  ].join('');
}
