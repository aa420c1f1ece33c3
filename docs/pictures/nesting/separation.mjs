/** Pictures of a separation, a squeeze and exact contacts, from one run on the same strip. */
import { contactShapes, settleSheets } from '../../../packages/geometry/dist/separate/exact-contacts.js';
import { separate } from '../../../packages/geometry/dist/separate/separate.js';
import { reachOf, squeezeSheet } from '../../../packages/geometry/dist/separate/squeeze.js';
import {
  refreshAll,
  restoreSnapshot,
  setEase,
  snapshotOf,
  totalSeverity,
} from '../../../packages/geometry/dist/separate/world.js';
import { LOOK, line, pageOfPanels, viewOf } from './drawing.mjs';
import { contactsPicture } from './contacts.mjs';
import { WIDTH_MM, drawStrip, outlines, thrownStrip, toEnd } from './strip-scene.mjs';

const PANEL_PX = 240;
const EFFORT = { attempts: 5, rounds: 150 };
/** The middle picture: as soon as the cost is down to this share. */
const MIDDLE_SHARE = 0.2;
const SQUEEZE_SHARE = 0.02;
const LEAST_SHARE = SQUEEZE_SHARE / 8;
const MOST_IN_VAIN = 8;

const view = (limit) => (left, top) =>
  viewOf({ minX: 0, maxX: limit, minY: 0, maxY: WIDTH_MM }, PANEL_PX, left, top);

export function separationPictures() {
  const strip = thrownStrip();
  const { world } = strip;
  const limit = world.sheets[0].limit;
  const first = { rings: outlines(strip), cost: totalSeverity(world), moves: 0 };
  const middle = separated(strip, first.cost);
  const apart = outlines(strip);
  const separation = threePanels('Overlaps before, during and after a separation', limit, [
    [first.rings, ['Thrown down', `overlap cost 100`]],
    [
      middle.half.rings,
      [`After ${middle.half.moves} moves`, `overlap cost ${percent(middle.half.cost, first.cost)}`],
    ],
    [apart, [`After ${middle.moves} moves`, 'nothing overlaps: cost 0']],
  ]);
  const steps = squeezes(strip);
  const last = steps[steps.length - 1];
  return {
    'nesting-separation.svg': separation,
    'nesting-squeeze.svg': squeezePicture(steps.filter(isTelling).pop()),
    'nesting-contacts.svg': contactsPicture(last.separated, last.settled),
  };
}

const percent = (cost, whole) => String(Math.round((100 * cost) / whole));

/** Separates, and keeps the places half-way. */
function separated(strip, firstCost) {
  const { world } = strip;
  const work = separate(world, EFFORT);
  let half;
  let moves = 0;
  for (;;) {
    const step = work.next();
    if (step.done) {
      if (!step.value)
        throw new Error('The strip of the pictures can not be separated; choose another seed.');
      return { half, moves };
    }
    moves++;
    const cost = totalSeverity(world);
    if (half === undefined && cost < MIDDLE_SHARE * firstCost) half = { rings: outlines(strip), cost, moves };
  }
}

function threePanels(title, limit, panels, extra = () => '') {
  const at = view(limit);
  return pageOfPanels(
    title,
    panels.map(([rings, lines, own = limit], i) => ({
      height: at(0, 0).height,
      lines,
      draw: (left, top) => drawStrip(at(left, top), rings, own) + extra(at(left, top), i),
    })),
    PANEL_PX,
  );
}

/** What one squeeze did to the strip; undefined if it was in vain and undone. */
function squeezeOnce(strip, shapes, share) {
  const { scene, world } = strip;
  const sheet = world.sheets[0];
  sheet.limit = reachOf(world, 0);
  const before = snapshotOf(world);
  const from = { rings: outlines(strip), limit: sheet.limit };
  const by = share * sheet.limit;
  const at = world.random.next() * sheet.limit;
  squeezeSheet(world, 0, by, at);
  refreshAll(world);
  const squeezed = { rings: outlines(strip), limit: sheet.limit, at, by };
  const isApart = toEnd(separate(world, EFFORT));
  const separated = { rings: outlines(strip), limit: reachOf(world, 0) };
  if (isApart && settleSheets(scene, world, shapes, () => from.limit)) {
    const settled = { rings: outlines(strip), limit: reachOf(world, 0) };
    setEase(world, 0);
    return { from, squeezed, separated, settled };
  }
  setEase(world, 0);
  restoreSnapshot(world, before);
  return undefined;
}

/** Shortens the strip as long as it can: the steps that succeeded. */
function squeezes(strip) {
  const shapes = contactShapes(strip.scene);
  const steps = [];
  let vain = 0;
  let share = 2 * SQUEEZE_SHARE;
  while (vain < MOST_IN_VAIN) {
    const step = squeezeOnce(strip, shapes, share);
    if (step !== undefined) steps.push(step);
    else share = Math.max(share / 2, LEAST_SHARE);
    vain = step === undefined ? vain + 1 : 0;
  }
  return steps;
}

function squeezePicture({ from, squeezed, separated: to }) {
  const title = 'A strip, the same strip squeezed, and separated again';
  const mm = (value) => `${Math.round(value)} mm`;
  const panels = [
    [from.rings, [`Length ${mm(from.limit)}`, 'nothing overlaps'], from.limit],
    [squeezed.rings, [`Shortened by ${mm(squeezed.by)}`, 'all beyond the dotted line moved'], squeezed.limit],
    [to.rings, [`Length ${mm(to.limit)}`, 'separated again'], to.limit],
  ];
  return threePanels(title, from.limit, panels, (at, i) =>
    i === 2
      ? ''
      : line(
          at,
          { x: squeezed.at, y: 0 },
          { x: squeezed.at, y: WIDTH_MM },
          { stroke: LOOK.circle, 'stroke-width': 2, 'stroke-dasharray': '2 4' },
        ),
  );
}

/** A line somewhere in the middle, and a step that the eye sees. */
function isTelling({ squeezed: { at, by, limit } }) {
  return at > 0.25 * limit && at < 0.75 * limit && by > 0.9 * SQUEEZE_SHARE * limit;
}
