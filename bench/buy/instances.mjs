// Whether hides of chance stand for hides that somebody else drew: for each hide of published instances (see bench/nest),
// as many of the instance's pieces as are said to fit on it in 90 of 100, laid on the hide itself.
// Run after "pnpm build": node bench/buy/instances.mjs FOLDER [--trials 8] [--only Test7]
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { regionArea, runNest, startNest } from '@hidebound/geometry';
import { DEFAULT_WORKSHOP, areaForChance, hidesOfTrial, needAfter, needBeliefs } from '@hidebound/leather';
import { sheetsOfOrder } from '../../packages/leather/dist/order/sheets.js';
import { readLeather } from '../nest/read-leather.mjs';

const folder = process.argv[2];
const option = (name, fallback) => {
  const at = process.argv.indexOf(`--${name}`);
  return at < 0 ? fallback : process.argv[at + 1];
};
const trials = Number(option('trials', 8));
const names = option('only', 'Scarpa,Test3,Test7,Test8').split(',');
const CHANCE = 0.9;
/** Pieces of a trial, as a share of one hide. */
const TRIAL_SHARE = 0.6;
/** Any cut will do whose shape is a hide's: the instances do not say theirs. */
const CUT = DEFAULT_WORKSHOP.cuts.find(({ name }) => name === 'side');

let enough = 0;
let all = 0;
for (const name of names) {
  const file = join(folder ?? '', `${name}.json`);
  if (folder === undefined || !existsSync(file)) {
    console.log(`${name}: skipped, there is no ${file}; give the folder of the instances.`);
    continue;
  }
  const { problem } = readLeather(name, JSON.parse(readFileSync(file, 'utf8')));
  for (const sheet of problem.sheets) {
    const areaMm2 = regionArea(sheet.region);
    const needs = Array.from({ length: trials }, (_, i) => needOf(problem, sheet, areaMm2, i + 1));
    const need = needAfter(needs, 0, needBeliefs(DEFAULT_WORKSHOP));
    // A need for each mm² of pieces, so that pieces of this area are enough in so many of 100.
    const piecesMm2 = areaMm2 / areaForChance(need, CHANCE);
    const { isEnough, share, count } = layOn(problem, sheet, piecesMm2);
    if (count === 0) {
      console.log(`${name}, ${sheet.id}: skipped, no whole piece is as small as what is said to fit.`);
      continue;
    }
    all++;
    if (isEnough) enough++;
    console.log(
      `${name}, ${sheet.id}: ${count} pieces, ${(100 * share).toFixed(0)} % of the hide: ${isEnough ? 'all laid' : 'not all laid'}`,
    );
  }
}
if (all > 0) console.log(`said to be enough in 90 of 100: ${enough} of ${all}`);

/** What one trial needs of leather for each mm² of pieces. */
function needOf(problem, { region, qualities }, areaMm2, number) {
  const spoilt = qualities.reduce(
    (sum, { areas }) => sum + areas.reduce((own, area) => own + regionArea(area), 0),
    0,
  );
  const share = Math.max(0.5, 1 - spoilt / regionArea({ ...region, openings: [] }));
  const hides = hidesOfTrial(
    {
      rule: CUT,
      areaMm2: { min: areaMm2, max: areaMm2 },
      usableShare: { min: share, max: share },
      seed: 1,
    },
    number,
    2,
  );
  const order = {
    leathers: [{ name: 'all', hides: hides.map(({ file }) => file) }],
    articles: [],
    useFrom: 'tail',
    cutting: { edgeMm: 0, voidMm: 0 },
  };
  const { sheets } = sheetsOfOrder(order, hides, { workshop: DEFAULT_WORKSHOP });
  const scaled = withPieces(problem, sheets, TRIAL_SHARE * areaMm2);
  const { placements } = runNest({ ...scaled, budget: { seed: 1, streams: 1, joins: 0 } });
  const areas = new Map(problem.items.map((item) => [item.id, regionArea(item.region)]));
  const on = sheets.map(({ id }) =>
    placements.filter(({ sheet }) => sheet === id).reduce((sum, { item }) => sum + areas.get(item), 0),
  );
  const pieces = on[0] + on[1];
  // All on the first one: what lies beyond its last piece is not used up.
  if (on[1] === 0) return usedUp(sheets[0], placements, problem) / pieces;
  return areaMm2 / on[0];
}

function usedUp(sheet, placements, problem) {
  const radius = new Map(
    problem.items.map(({ id, region }) => [
      id,
      Math.max(...region.outer.map(({ x, y }) => Math.hypot(x, y))),
    ]),
  );
  const along = ({ x, y }) => x * sheet.useFrom.x + y * sheet.useFrom.y;
  const ends = sheet.region.outer.map(along);
  const [from, to] = [Math.min(...ends), Math.max(...ends)];
  const farthest = Math.max(...placements.map((own) => along(own) + radius.get(own.item)));
  return regionArea(sheet.region) * Math.min(1, (farthest - from) / (to - from));
}

function layOn(problem, sheet, piecesMm2) {
  const scaled = withPieces(problem, [sheet], piecesMm2);
  const run = startNest({ ...scaled, budget: { seed: 1, streams: 2, joins: 2 } });
  while (!run.done && !(run.best() && run.best().unplaced.length === 0)) run.advance();
  const { placements, unplaced } = run.best();
  const areas = new Map(problem.items.map((item) => [item.id, regionArea(item.region)]));
  const asked = [...placements, ...unplaced].reduce((sum, { item }) => sum + areas.get(item), 0);
  return {
    isEnough: unplaced.length === 0,
    share: asked / regionArea(sheet.region),
    count: placements.length + unplaced.length,
  };
}

/** The instance's pieces in their own proportions, cut to an area. */
function withPieces(problem, sheets, areaMm2) {
  const wanted = problem.setKinds.flatMap(({ sets, members }) =>
    members.map(({ item, count }) => ({ item, count: count * (sets === 'many' ? 1 : sets) })),
  );
  const areas = new Map(problem.items.map((item) => [item.id, regionArea(item.region)]));
  const all = wanted.reduce((sum, { item, count }) => sum + count * areas.get(item), 0);
  const scale = areaMm2 / all;
  // Whole pieces, those with the largest remainder first, as long as there is room.
  const counts = wanted.map(({ item, count }) => ({
    item,
    count: Math.floor(count * scale),
    rest: (count * scale) % 1,
  }));
  let left = areaMm2 - counts.reduce((sum, { item, count }) => sum + count * areas.get(item), 0);
  for (const own of [...counts].sort((x, y) => y.rest - x.rest)) {
    if (areas.get(own.item) > left) continue;
    own.count++;
    left -= areas.get(own.item);
  }
  const members = counts.filter(({ count }) => count > 0).map(({ item, count }) => ({ item, count }));
  const ids = sheets.map(({ id }) => id);
  return {
    ...problem,
    items: problem.items
      .filter(({ id }) => members.some(({ item }) => item === id))
      .map((item) => ({ ...item, sheets: ids })),
    sheets,
    setKinds: [{ id: 'all', sets: 1, members, value: 1, priority: 0, keep: 'nothing', beside: [] }],
    objective: { ...problem.objective, mode: 'placeAll' },
  };
}
