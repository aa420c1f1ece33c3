// How far the quick estimate is from the trials: for each case of the calibration, the need by formula over the mean need of
// the trials in the --in files. Run after "pnpm build": node bench/buy/quick.mjs --in FILE [--in FILE]
import { readFileSync } from 'node:fs';
import { lossPiecesOf, quickNeed, usableShareOf } from '@hidebound/leather';
import { calibrationCases } from './cases.mjs';

const files = process.argv.flatMap((word, i, all) => (word === '--in' ? [all[i + 1]] : []));
const rows = files.flatMap((file) => readFileSync(file, 'utf8').trim().split('\n').map(JSON.parse));
const ratios = [];
for (const { name, pieces, workshop, purchase, buyable } of await calibrationCases()) {
  const needs = rows
    .filter((row) => row.case === name && row.kind === 'trial' && row.outcome.needed !== undefined)
    .map((row) => row.outcome.needMm2);
  if (needs.length === 0) continue;
  const started = performance.now();
  const { likelyMm2 } = quickNeed(
    purchase,
    lossPiecesOf(purchase, pieces),
    { ...buyable, usableShare: usableShareOf(buyable, workshop) },
    workshop,
  );
  const ms = performance.now() - started;
  const ratio = likelyMm2 / (needs.reduce((sum, need) => sum + need, 0) / needs.length);
  ratios.push(ratio);
  console.log(`${name}: ${ratio.toFixed(2)} of the trials' mean need, ${ms.toFixed(0)} ms`);
}
const logs = ratios.map(Math.log);
const mean = logs.reduce((sum, own) => sum + own, 0) / logs.length;
const off = Math.sqrt(logs.reduce((sum, own) => sum + (own - mean) ** 2, 0) / logs.length);
console.log(`all: ${Math.exp(mean).toFixed(2)} on the mean, ${(100 * off).toFixed(0)} % off`);
