// A small bounding-box skyline packer, the second baseline: every piece is its box, nothing is put behind the
// skyline. On a strip a box goes to the skyline's corner where it reaches least far; on a hide it is then moved on
// along x until it lies wholly on leather that is good enough for the strictest need of its piece.
import { leave, makeShape, rangesWithin } from './line-search.mjs';
import { bySize, readLand, roundMm, shapesOf, turnItem, turnsOf } from './baseline-problem.mjs';

/** On a hide, heights tried beside the skyline's corners. */
const LINES = 64;

const SAME_MM = 1e-7;

/** @returns a NestAnswer; what found no room is told as such. */
export function layBoxes(problem) {
  const lands = problem.sheets.map((sheet) => startLand(sheet));
  const kinds = new Map(problem.items.map((item) => [item.id, { item, boxes: chooseBoxes(item) }]));
  const sizeOf = ({ id }) => kinds.get(id).boxes[0].width * kinds.get(id).boxes[0].height;
  const placements = [];
  const unplaced = [];
  for (const copy of bySize(problem, sizeOf)) {
    const placed = layBox(kinds.get(copy.item), lands);
    if (placed === undefined) unplaced.push({ ...copy, reason: 'no-room' });
    else placements.push({ ...copy, ...placed });
  }
  return { placements, lanes: [], roughCuts: [], unplaced, joins: 0 };
}

/** On the first sheet that takes it. Where one copy found no room the next one finds none: skylines only grow. */
function layBox({ item, boxes }, lands) {
  for (const land of lands) {
    if (!item.sheets.includes(land.id) || land.fullFor.has(item.id)) continue;
    const seat = bestSeat(boxes, land);
    if (seat !== undefined) return takeSeat(seat, land);
    land.fullFor.add(item.id);
  }
  return undefined;
}

/** The skyline: how far along x the sheet is used, on runs [from, to] of y from end to end. */
function startLand(sheet) {
  const land = readLand(sheet);
  const { minX, minY, maxY } = land.outer.shape;
  const isRectangle = sheet.region.outer.length === 4 && land.outer.shape.isConvex;
  const lines = isRectangle && land.zones.length + land.openings.length === 0 ? 0 : LINES;
  return { ...land, lines, skyline: [{ from: minY, to: maxY, x: minX }], fullFor: new Set() };
}

/** Boxes of the allowed turns, each size once; of any angle: the smallest box and its quarter turns. */
function chooseBoxes(item) {
  const boxes = turnsOf(item).map((deg) => makeBox(item, deg));
  const areaOf = ({ width, height }) => width * height;
  const smallest = boxes.reduce((best, box) => (areaOf(box) < areaOf(best) - SAME_MM ? box : best));
  const allowed = item.angleRule.frame === 'free' ? quarterTurns(item, smallest) : boxes;
  const sizes = new Map(
    allowed.map((box) => [`${box.width.toFixed(6)} ${box.height.toFixed(6)}`, box]).reverse(),
  );
  return [...sizes.values()].reverse();
}

function quarterTurns(item, { turnDeg }) {
  return [turnDeg, (turnDeg + 90) % 360].map((deg) => makeBox(item, deg));
}

function makeBox(item, turnDeg) {
  const { minX, minY, maxX, maxY } = turnItem(item, turnDeg).body;
  const [width, height] = [maxX - minX, maxY - minY];
  const ring = [
    { x: 0, y: 0 },
    { x: width, y: 0 },
    { x: width, y: height },
    { x: 0, y: height },
  ];
  const maxGrade = Math.min(item.need.maxGrade, ...item.parts.map(({ need }) => need.maxGrade));
  return { turnDeg, minX, minY, width, height, ...shapesOf([ring], { maxGrade }, [], turnDeg) };
}

/** Least reach along x, then least y, then the earlier turn. */
function bestSeat(boxes, land) {
  let best;
  for (const box of boxes) {
    for (const y of heightsFor(box, land)) {
      const x = firstFree(box, land, skylineOver(land, y, y + box.height), y);
      const reach = x + box.width;
      if (x === Infinity) continue;
      if (
        best === undefined ||
        reach < best.reach - SAME_MM ||
        (reach < best.reach + SAME_MM && y < best.y)
      ) {
        best = { box, x, y, reach };
      }
    }
  }
  return best;
}

function heightsFor({ height }, { skyline, lines, outer }) {
  const { minY, maxY } = outer.shape;
  const last = maxY - height;
  if (last < minY - SAME_MM) return [];
  const corners = skyline.flatMap(({ from, to }) => [from, to - height]);
  const level = Array.from({ length: lines }, (_, i) => minY + ((last - minY) * i) / Math.max(1, lines - 1));
  return [...corners, ...level]
    .filter((y) => y >= minY - SAME_MM && y <= last + SAME_MM)
    .sort((a, b) => a - b);
}

function skylineOver({ skyline }, low, high) {
  return skyline.reduce(
    (most, { from, to, x }) => (from < high - SAME_MM && to > low + SAME_MM ? Math.max(most, x) : most),
    -Infinity,
  );
}

/** The first x from there on at which the box lies on leather that is good enough; Infinity: none. */
function firstFree(box, land, start, y) {
  const ranges = rangesWithin(box.body, land.outer.shape, y);
  const [{ maxGrade }] = box.needs;
  const hazards = [...land.openings, ...land.zones.filter(({ grade }) => grade > maxGrade)];
  let x = start;
  for (let before; before !== x;) {
    before = x;
    const range = ranges.find(([, to]) => x <= to + SAME_MM);
    if (range === undefined) return Infinity;
    x = Math.max(x, range[0]);
    for (const { shape } of hazards) x = leave(box.body, shape, x, y);
  }
  return x;
}

/** Writes the piece's place, to 0.001 mm, and lifts the skyline. */
function takeSeat({ box, x, y, reach }, land) {
  const [low, high] = [y, y + box.height];
  const cut = land.skyline.flatMap((run) => [
    { ...run, to: Math.min(run.to, low) },
    { ...run, from: Math.max(run.from, high) },
  ]);
  land.skyline = [...cut, { from: low, to: high, x: reach }]
    .filter(({ from, to }) => to - from > SAME_MM)
    .sort((a, b) => a.from - b.from);
  return {
    sheet: land.id,
    x: roundMm(x - box.minX),
    y: roundMm(y - box.minY),
    rotationDeg: box.turnDeg,
  };
}
