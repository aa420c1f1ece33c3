// Names of all instances, and each one by its name: a run's own process reads only its own.
import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { growthInstances } from './make-growth.mjs';
import { manyInstances } from './make-many.mjs';
import { readBins } from './read-bins.mjs';
import { readLeather } from './read-leather.mjs';
import { readStrip } from './read-strip.mjs';

const READERS = { strip: readStrip, real: readStrip, leather: readLeather, bins: readBins };

/** References: { kind, name } and what loading it needs. */
export function listInstances({ kind: kinds, data, only, turns, shapes }) {
  const all = kinds.flatMap((kind) => {
    if (kind === 'many') return manyInstances(shapes).map(([name]) => ({ kind, name, shapes }));
    if (kind === 'growth') return growthInstances(shapes).map((one) => growthReference(one, shapes));
    return filesOf(join(data, kind)).map((name) => ({ kind, name, file: join(data, kind, name), turns }));
  });
  return all.filter(({ name }) => only === undefined || only.includes(name));
}

function growthReference([series, size], shapes) {
  return { kind: 'growth', name: `${series}-${size}`, series, size, shapes };
}

function filesOf(folder) {
  if (!existsSync(folder)) return [];
  const files = readdirSync(folder).filter((file) => file.endsWith('.json'));
  return files.map((file) => file.slice(0, -'.json'.length)).sort();
}

/** The instance: kind, name, problem, notes, and for some their optimum or lattice density. */
export function loadInstance(reference) {
  const { kind, name, shapes } = reference;
  if (kind === 'many') return { kind, ...made(manyInstances(shapes), (one) => one[0] === name) };
  if (kind === 'growth') {
    return { kind, ...made(growthInstances(shapes), ([series, size]) => `${series}-${size}` === name) };
  }
  const json = JSON.parse(readFileSync(`${reference.file}.json`, 'utf8'));
  return { kind, ...READERS[kind](name, json, { turns: reference.turns }) };
}

function made(instances, isWanted) {
  return instances.find(isWanted).at(-1)();
}
