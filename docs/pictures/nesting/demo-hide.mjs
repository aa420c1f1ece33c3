/** Two hides of the demo after the first layout and after some joins of the search. */
import { ringBox } from '@hidebound/geometry';
import { checkAnswer, isProven } from '@hidebound/geometry/check';
import { runNestInThreads } from '@hidebound/geometry/node';
import { placedRings, usedUpArea } from '../../../packages/geometry/dist/leftover/used-up.js';
import { simplifyGrowing } from '../../../packages/geometry/dist/shape/simplify.js';
import { LOOK, MARGIN, line, pageOfPanels, region, viewOf } from './drawing.mjs';

const PANEL_PX = 380;
const STREAMS = 4;
/** The answer is the same with any number. */
const THREADS = 2;
/** What is not seen: outlines may be simpler by this. */
const SIMPLER_PX = 0.25;

/** `sheets`: indexes of the hides that are drawn, one below the other. */
export async function demoHidePicture(problem, { sheets: indexes, joins }) {
  let first;
  const options = { threads: THREADS, onBest: (best) => (first ??= best) };
  const last = await runNestInThreads({ ...problem, budget: { seed: 1, streams: STREAMS, joins } }, options);
  const sheets = indexes.map((index) => problem.sheets[index]);
  const panels = [first, last].map((answer) => {
    if (!isProven(checkAnswer(problem, answer))) throw new Error('A layout of the pictures is not proven.');
    return panel(problem, sheets, answer);
  });
  return pageOfPanels('Two hides of the demo, after the first layout and after the search', panels, PANEL_PX);
}

function panel(problem, sheets, answer) {
  const boxes = sheets.map(({ region: { outer } }) => ringBox(outer));
  const widest = Math.max(...boxes.map(({ minX, maxX }) => maxX - minX));
  const widths = boxes.map(({ minX, maxX }) => (PANEL_PX * (maxX - minX)) / widest);
  const heights = boxes.map((box, i) => viewOf(box, widths[i]).height);
  const laid = sheets.map((sheet) => laidOn(problem, sheet, answer));
  const areas = laid.map(({ used }) => (used.areaMm2 / 1e4).toFixed(1));
  return {
    height: heights.reduce((sum, height) => sum + height + MARGIN, -MARGIN),
    lines: [
      answer.joins === 0 ? 'Join 0: the first layout' : `Join ${answer.joins}`,
      `${answer.placements.length} pieces on all hides; on these`,
      `${areas.join(' + ')} dm² used up`,
    ],
    draw: (left, top) => {
      let at = top;
      return sheets
        .map((sheet, i) => {
          const drawn = drawHide(viewOf(boxes[i], widths[i], left, at), sheet, boxes[i], laid[i]);
          at += heights[i] + MARGIN;
          return drawn;
        })
        .join('');
    },
  };
}

function laidOn(problem, sheet, { placements }) {
  const own = placements.filter((one) => one.sheet === sheet.id);
  const rings = placedRings(own, problem.items);
  return { rings, used: usedUpArea(sheet, rings, problem.objective.keepMm) };
}

function drawHide(view, sheet, box, { rings, used }) {
  const simpler = (ring) => simplifyGrowing(ring, SIMPLER_PX / view.scale);
  const plain = ({ outer, openings }) => ({ outer: simpler(outer), openings });
  return [
    region(view, plain(sheet.region), {
      fill: LOOK.leather,
      stroke: LOOK.ink,
      'stroke-width': 1.2,
      'fill-rule': 'evenodd',
    }),
    ...sheet.qualities.filter(isFlaw).flatMap((quality) =>
      quality.areas.map((area) =>
        region(view, plain(area), {
          fill: quality.isVoid ? LOOK.bad : LOOK.faint,
          'fill-opacity': quality.isVoid ? 0.7 : 0.22,
          'fill-rule': 'evenodd',
        }),
      ),
    ),
    ...rings.map((ring) =>
      region(
        view,
        { outer: simpler(ring), openings: [] },
        { fill: LOOK.piece, 'fill-opacity': 0.8, stroke: LOOK.pieceLine, 'stroke-width': 0.8 },
      ),
    ),
    freeingCut(view, sheet, box, used.cutAtMm),
  ].join('');
}

const isFlaw = ({ isVoid, weak, grade }) => isVoid || weak || grade > 0;

/** Across the end from which the hide is used up; the demo's runs along an axis. */
function freeingCut(view, { useFrom }, { minX, minY, maxX, maxY }, cutAtMm) {
  const style = { stroke: LOOK.circle, 'stroke-width': 1.8, 'stroke-dasharray': '6 4' };
  const middle = [cutAtMm * useFrom.x, cutAtMm * useFrom.y];
  const reach = Math.hypot(maxX - minX, maxY - minY);
  const ends = [-reach, reach].map((t) => ({ x: middle[0] - t * useFrom.y, y: middle[1] + t * useFrom.x }));
  const within = ends.map(({ x, y }) => ({
    x: Math.min(maxX, Math.max(minX, x)),
    y: Math.min(maxY, Math.max(minY, y)),
  }));
  return line(view, within[0], within[1], style);
}
