// The frozen greedy baseline: bottom-left by area, every 5 degrees that the rule allows, first hide that takes it.
// It stands apart from the engine and is not to be improved: `baseline-checksums.json` holds what it gives.
//
// Pieces by falling area. A piece goes to the first sheet that has room for it, to the place and turn at which it
// reaches least far along x, then along y, of all places that lie leftmost on one of many level lines; from there
// it slides down and left until it touches. Exact to 0.1 µm, then rounded to 0.001 mm. Rings of many corners are laid
// as simpler ones that contain them.
import { makeCrossShape, makeShape, leave, rangesWithin, slideStop } from './line-search.mjs';
import { bySize, moveRings, readLand, roundMm, simplerItem, turnItem, turnsOf } from './baseline-problem.mjs';

/** Level lines over the room that a piece has across the sheet. */
const LINES = 96;

/** Lines along laid pieces' boxes are added for pieces of few turns, whose straight sides may meet. */
const MOST_TURNS_ALONG = 8;

/** Down and left in turn, at most so often. */
const SLIDES = 8;

const SAME_MM = 1e-7;

/** @returns a NestAnswer; what found no room is told as such. */
export function layGreedily(problem) {
  const lands = problem.sheets.map((sheet) => ({ ...readLand(sheet), laid: [] }));
  const itemOf = new Map(problem.items.map((item) => [item.id, item]));
  const placements = [];
  const unplaced = [];
  let search;
  for (const copy of bySize(problem, ({ region }) => makeShape([region.outer, ...region.openings]).area)) {
    if (search?.item.id !== copy.item) search = startSearch(itemOf.get(copy.item), lands);
    const found = nextPlace(search);
    if (found === undefined) unplaced.push({ ...copy, reason: 'no-room' });
    else placements.push({ ...copy, ...found });
  }
  return { placements, lanes: [], roughCuts: [], unplaced, joins: 0 };
}

/** The search for one item's copies: a sheet has its queue of lines, made when the sheets before it are full. */
function startSearch(item, lands) {
  const simpler = simplerItem(item);
  const turns = turnsOf(item).map((deg) => turnItem(simpler, deg));
  return { item, turns, lands: lands.filter(({ id }) => item.sheets.includes(id)), at: 0, queue: undefined };
}

function nextPlace(search) {
  for (; search.at < search.lands.length; search.at++, search.queue = undefined) {
    const land = search.lands[search.at];
    search.queue ??= startQueue(search.turns, land);
    const line = leftmost(search.queue, land);
    if (line === undefined) continue;
    const settled = settle(line, land);
    const [x, y] = [roundMm(settled.x), roundMm(settled.y)];
    const rings = moveRings(line.turned.rings, x, y);
    land.laid.push({ shape: makeShape(rings), cross: makeCrossShape(rings) });
    addLinesAlong(search.queue, search.turns, land, land.laid.at(-1).shape);
    return { sheet: land.id, x, y, rotationDeg: line.turned.turnDeg };
  }
  return undefined;
}

/** A line is where a turned piece may lie at one height; `x` only grows, as pieces are added. */
function startQueue(turns, land) {
  const queue = [];
  for (const [rank, turned] of turns.entries()) {
    const low = land.outer.shape.minY - turned.body.minY;
    const high = land.outer.shape.maxY - turned.body.maxY;
    if (high < low - SAME_MM) continue;
    const steps = high - low <= SAME_MM ? 0 : LINES;
    for (let i = 0; i <= steps; i++) {
      push(queue, newLine(rank, turned, land, i === 0 ? low : low + ((high - low) * i) / steps));
    }
  }
  for (const { shape } of land.laid) addLinesAlong(queue, turns, land, shape);
  return queue;
}

function newLine(rank, turned, land, y) {
  return { rank, turned, y, x: land.outer.shape.minX - turned.body.minX, seen: -1, ranges: undefined };
}

/** Lines on which a piece would lie right below or above a laid one's box. */
function addLinesAlong(queue, turns, land, laid) {
  if (turns.length > MOST_TURNS_ALONG) return;
  for (const [rank, turned] of turns.entries()) {
    const low = land.outer.shape.minY - turned.body.minY - SAME_MM;
    const high = land.outer.shape.maxY - turned.body.maxY + SAME_MM;
    for (const y of [laid.maxY - turned.body.minY, laid.minY - turned.body.maxY]) {
      if (y >= low && y <= high) push(queue, newLine(rank, turned, land, y));
    }
  }
}

/** The best line: the one at the queue's head, once its place has been tested against everything. */
function leftmost(queue, land) {
  while (queue.length > 0) {
    const line = queue[0];
    if (line.seen === land.laid.length) return line;
    if (!isStillFree(line, land)) advance(line, land);
    line.seen = land.laid.length;
    if (line.x === Infinity) dropFirst(queue);
    else sinkFirst(queue);
  }
  return undefined;
}

/** What was laid since the line was looked at last doesn't touch its place. */
function isStillFree(line, land) {
  if (line.seen < 0) return false;
  for (let i = line.seen; i < land.laid.length; i++) {
    if (leave(line.turned.body, land.laid[i].shape, line.x, line.y) > line.x) return false;
  }
  return true;
}

/** Moves a line's place to the first one, from where it is, that is free of everything; Infinity: none. */
function advance(line, land) {
  const { turned, y } = line;
  line.ranges ??= rangesWithin(turned.body, land.outer.shape, y);
  let x = line.x;
  for (let before; before !== x && x < Infinity;) {
    before = x;
    x = intoRange(line.ranges, x);
    if (x === Infinity) break;
    eachObstacle(turned, land, ({ shape }, obstacle) => {
      x = leave(shape, obstacle.shape, x, y);
    });
  }
  line.x = x;
}

function intoRange(ranges, x) {
  for (const [from, to] of ranges) {
    if (x <= from) return from;
    if (x <= to + SAME_MM) return x;
  }
  return Infinity;
}

function eachObstacle(turned, land, visit) {
  for (const opening of land.openings) visit(turned.needs[0], opening);
  for (const need of turned.needs) {
    for (const zone of land.zones) if (zone.grade > need.maxGrade) visit(need, zone);
  }
  for (const laid of land.laid) visit(turned.needs[0], laid);
}

/** Down, then left, until nothing moves. */
function settle({ turned, x, y }, land) {
  for (let i = 0; i < SLIDES; i++) {
    const down = slide(turned, land, 'cross', y, x);
    const left = slide(turned, land, 'shape', x, down);
    if (x - left < SAME_MM && y - down < SAME_MM) break;
    [x, y] = [left, down];
  }
  return { x, y };
}

function slide(turned, land, axis, along, across) {
  let stop = slideStop(turned.needs[0][axis], land.outer[axis], along, across);
  eachObstacle(turned, land, (need, obstacle) => {
    const own = slideStop(need[axis], obstacle[axis], along, across);
    if (own > stop) stop = own;
  });
  return stop < along ? stop : along;
}

/** Least reach along x, then along y, then the earlier turn, then the lower line. */
function compareLines(a, b) {
  return (
    a.x + a.turned.body.maxX - (b.x + b.turned.body.maxX) ||
    a.y + a.turned.body.maxY - (b.y + b.turned.body.maxY) ||
    a.rank - b.rank ||
    a.y - b.y
  );
}

function push(queue, line) {
  let i = queue.push(line) - 1;
  while (i > 0) {
    const parent = (i - 1) >> 1;
    if (compareLines(queue[parent], line) <= 0) break;
    queue[i] = queue[parent];
    i = parent;
  }
  queue[i] = line;
}

function dropFirst(queue) {
  const last = queue.pop();
  if (queue.length === 0) return;
  queue[0] = last;
  sinkFirst(queue);
}

function sinkFirst(queue) {
  const line = queue[0];
  let i = 0;
  for (;;) {
    let child = 2 * i + 1;
    if (child >= queue.length) break;
    if (child + 1 < queue.length && compareLines(queue[child + 1], queue[child]) < 0) child++;
    if (compareLines(line, queue[child]) <= 0) break;
    queue[i] = queue[child];
    i = child;
  }
  queue[i] = line;
}
