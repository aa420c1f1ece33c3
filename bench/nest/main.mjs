// The nesting benchmarks: strips, hides, bins, many equal pieces, growth; against published figures and two
// baselines. Run by `pnpm bench:nest`; how to run and read it: README.md beside this file.
import { fork } from 'node:child_process';
import { appendFileSync, readFileSync } from 'node:fs';
import { cpus, totalmem } from 'node:os';
import { join } from 'node:path';
import { compareFrozen, freeze } from './frozen.mjs';
import { listInstances } from './instances.mjs';
import { readOptions } from './options.mjs';
import { baselineTable, growthTable, mainTables, remarks } from './tables.mjs';

const here = import.meta.dirname;

/** A run that hasn't ended so long after its time is given up; baselines have no time of their own. */
const GRACE_SECONDS = 180;
const BASELINE_SECONDS = 900;

/** For the growth of the first layout, which a search finishes whatever its time. */
const GROWTH_SECONDS = 1;

function main() {
  let options;
  try {
    options = readOptions(process.argv.slice(2));
  } catch (error) {
    console.error(error.message);
    process.exitCode = 2;
    return undefined;
  }
  return bench(options);
}

async function bench(options) {
  const { version } = JSON.parse(readFileSync(join(here, '../../package.json'), 'utf8'));
  const machine = `Hidebound ${version}, Node ${process.version}, ${cpus().length} x ${cpus()[0].model.trim()}, ${(totalmem() / 2 ** 30).toFixed(0)} GiB`;
  const references = listInstances(options);
  if (references.length === 0) {
    console.error(`no instance of that kind and name in ${options.data ?? 'what is made at run time'}`);
    process.exitCode = 2;
    return;
  }
  if (options.jsonl !== undefined) appendLine(options.jsonl, { machine, ...options });
  const results = await runAll(jobsOf(references, options), options);
  if (options.freeze) freeze(results);
  const referenceOf = ({ name }) => references.find((reference) => reference.name === name);
  const effort = `${options.seconds} s a run, seeds ${options.seeds.join(', ')}, ${options.streams} streams, ${options.jobs} runs at a time`;
  const lines = [
    machine,
    effort,
    '',
    ...mainTables(results),
    ...baselineTable(results),
    ...compareFrozen(results),
    '',
    ...growthTable(results, referenceOf),
    ...remarks(results),
  ];
  console.log(lines.join('\n'));
}

/** Baselines don't depend on a seed: one run each, and none of the growth series. */
function jobsOf(references, { methods, seeds, seconds, streams, cache }) {
  return references.flatMap((reference) =>
    methods.flatMap((method) => {
      const isGrowth = reference.kind === 'growth';
      const own = isGrowth ? Math.min(seconds, GROWTH_SECONDS) : seconds;
      if (method === 'engine')
        return seeds.map((seed) => ({ reference, method, seed, seconds: own, streams }));
      return isGrowth ? [] : [{ reference, method, cache }];
    }),
  );
}

/** In order, so many at a time; the results in the order of the jobs. */
async function runAll(jobs, { jobs: atOnce, jsonl }) {
  const results = [];
  let next = 0;
  const worker = async () => {
    while (next < jobs.length) {
      const at = next++;
      results[at] = await runJob(jobs[at]);
      report(results[at], at, jobs.length);
      if (jsonl !== undefined) appendLine(jsonl, results[at]);
    }
  };
  await Promise.all(Array.from({ length: Math.max(1, atOnce) }, worker));
  return results;
}

function appendLine(file, value) {
  appendFileSync(file, `${JSON.stringify(value)}\n`);
}

function runJob(job) {
  return new Promise((done) => {
    const child = fork(join(here, 'run-one.mjs'), [JSON.stringify(job)]);
    const limit = job.method === 'engine' ? job.seconds + GRACE_SECONDS : BASELINE_SECONDS;
    let result;
    let isLate = false;
    const timer = setTimeout(() => {
      isLate = true;
      child.kill('SIGKILL');
    }, 1000 * limit);
    child.on('message', (message) => (result = message));
    child.on('exit', (code) => {
      clearTimeout(timer);
      const failed = isLate ? `not done after ${limit} s` : `ended with ${code}`;
      done(result ?? failedResult(job, failed));
    });
  });
}

function failedResult({ reference: { kind, name }, method, seed }, failed) {
  return { kind, name, method, seed, asked: 0, notes: [], goodness: 0, failed };
}

function report({ name, method, seed, goodness, unsupported, fault, failed, endMs }, at, count) {
  const time = endMs === undefined ? '' : ` in ${(endMs / 1000).toFixed(1)} s`;
  const how =
    unsupported === undefined ? (fault ?? failed ?? `${goodness.toFixed(3)}${time}`) : 'unsupported';
  const which = seed === undefined ? method : `${method}, seed ${seed}`;
  console.error(`[${at + 1}/${count}] ${name}, ${which}: ${how}`);
}

await main();
