// One run in a process of its own, so that peak memory is its own: one instance, one method, one seed.
// Started with a JSON argument; sends one message with the result.
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { layGreedily } from './baseline-greedy.mjs';
import { layBoxes } from './baseline-skyline.mjs';
import { search } from './engine.mjs';
import { loadInstance } from './instances.mjs';
import { checksumOf, demandedArea, demandedCount, faultOf, measure, sheetsArea } from './measure.mjs';
import { PUBLISHED } from './published.mjs';
import { ringArea } from './rings.mjs';

const BASELINES = { greedy: layGreedily, skyline: layBoxes };
const BASELINE_SOURCES = [
  'baseline-greedy',
  'baseline-skyline',
  'baseline-problem',
  'line-search',
  'grow-ring',
];

/** Share of a figure whose time is told. */
const NEARLY = 0.95;

/** So many of the layouts that a search reports are measured afterwards. */
const MEASURED = 400;

const job = JSON.parse(process.argv[2]);
const instance = loadInstance(job.reference);
process.send(await result(), () => process.disconnect());

async function result() {
  const { problem, notes, lattice, optimum } = instance;
  const head = {
    kind: instance.kind,
    name: instance.name,
    method: job.method,
    seed: job.seed,
    asked: demandedCount(problem),
    askedM2: demandedArea(problem) / 1e6,
    netM2: sheetsArea(problem) / 1e6,
    leastSheets: leastSheets(problem),
    corners: problem.sheets[0].region.outer.length,
    mode: problem.objective.mode,
    notes,
    ...(lattice === undefined ? {} : { lattice: 100 * lattice }),
    ...(optimum === undefined ? {} : { optimum }),
  };
  try {
    const own = job.method === 'engine' ? await runEngine(problem) : runBaseline(problem);
    return { ...head, ...own, peakMb: process.resourceUsage().maxRSS / 1024 };
  } catch (error) {
    const kind = error.code === 'unsupported' ? 'unsupported' : 'failed';
    return { ...head, [kind]: error.message, goodness: 0 };
  }
}

/** Sheets, in their order, that have at least the area asked for. */
function leastSheets(problem) {
  let rest = demandedArea(problem);
  const at = problem.sheets.findIndex((sheet) => (rest -= sheetsArea({ sheets: [sheet] })) <= 0);
  return at < 0 ? problem.sheets.length : at + 1;
}

async function runEngine(problem) {
  const { seconds, seed, streams } = job;
  const reported = [];
  const started = performance.now();
  const answer = await search(problem, {
    seconds,
    seed,
    streams,
    onBest: (best, elapsedMs) => reported.push([elapsedMs, best]),
  });
  const endMs = performance.now() - started;
  // Before anything else is computed: checks and measures need memory of their own.
  const peakMb = process.resourceUsage().maxRSS / 1024;
  const judged = judge(answer);
  const first = reported[0];
  return {
    ...judged,
    searchPeakMb: peakMb,
    endMs,
    ...(first === undefined
      ? {}
      : {
          firstMs: first[0],
          firstPieces: first[1].placements.length,
          firstFault: faultOf(problem, first[1]),
        }),
    ...(judged.fault === undefined ? timesOf(reported, judged.goodness) : {}),
  };
}

/** The exact check has the last word: a layout that fails it is worth nothing. */
function judge(answer) {
  const fault = faultOf(instance.problem, answer);
  const figures = measure(instance, answer);
  const checksum = checksumOf(answer);
  if (fault !== undefined) return { ...figures, goodness: 0, fault, checksum };
  return { ...figures, checksum, missed: answer.unplaced.length };
}

function timesOf(reported, final) {
  const every = Math.max(1, Math.ceil(reported.length / MEASURED));
  const chosen = reported.filter((_, i) => i % every === 0 || i === reported.length - 1);
  const history = chosen.map(([ms, best]) => [Math.round(ms), measure(instance, best).goodness]);
  const firstAt = (level) => history.find(([, goodness]) => goodness >= level)?.[0];
  const average = PUBLISHED[instance.name]?.average;
  return {
    history,
    ownMs: firstAt(NEARLY * final),
    ...(average === undefined ? {} : { averageMs: firstAt(NEARLY * average) }),
  };
}

function runBaseline(problem) {
  const kept = job.cache === undefined ? undefined : join(job.cache, `${cacheKey(problem)}.json`);
  if (kept !== undefined && existsSync(kept)) return judge(JSON.parse(readFileSync(kept, 'utf8')));
  const started = performance.now();
  const answer = withoutSurplus(problem, BASELINES[job.method](countable(problem)));
  const endMs = performance.now() - started;
  if (kept !== undefined) {
    mkdirSync(job.cache, { recursive: true });
    writeFileSync(kept, JSON.stringify(answer));
  }
  return { ...judge(answer), endMs };
}

/** Baselines count copies: where as many as fit are asked for, as many as have the sheets' area. */
function countable(problem) {
  const { items, setKinds } = problem;
  const areaOf = new Map(items.map(({ id, region }) => [id, ringArea(region.outer)]));
  const room = sheetsArea(problem);
  return {
    ...problem,
    setKinds: setKinds.map((kind) => {
      if (kind.sets !== 'many') return kind;
      const area = kind.members.reduce((sum, { item, count }) => sum + count * areaOf.get(item), 0);
      return { ...kind, sets: Math.floor(room / area) };
    }),
  };
}

/** Nobody misses a copy of which as many as fit were asked for. */
function withoutSurplus({ setKinds }, answer) {
  const counted = setKinds.filter(({ sets }) => sets !== 'many').flatMap(({ members }) => members);
  const items = new Set(counted.map(({ item }) => item));
  return { ...answer, unplaced: answer.unplaced.filter(({ item }) => items.has(item)) };
}

function cacheKey(problem) {
  const hash = createHash('sha256').update(job.method).update(JSON.stringify(problem));
  for (const name of BASELINE_SOURCES) hash.update(readFileSync(join(import.meta.dirname, `${name}.mjs`)));
  return `${job.method}-${hash.digest('hex').slice(0, 24)}`;
}
