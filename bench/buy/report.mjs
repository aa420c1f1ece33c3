// Of orders said to be enough in so many of 100, how many were. node bench/buy/report.mjs --in FILE [--in FILE]
import { readFileSync } from 'node:fs';

const files = process.argv.flatMap((word, i, all) => (word === '--in' ? [all[i + 1]] : []));
const checks = files
  .flatMap((file) => readFileSync(file, 'utf8').trim().split('\n').map(JSON.parse))
  .filter(({ kind }) => kind === 'check');
const GROUPS = [
  ['as told', ({ isShifted }) => !isShifted],
  ['10 % smaller, more flaws', ({ scale }) => scale < 1],
  ['10 % larger, more flaws', ({ scale }) => scale > 1],
  ['all', () => true],
];
console.log(`| said to be enough in | ${GROUPS.map(([name]) => name).join(' | ')} |`);
console.log(`| --- |${' --- |'.repeat(GROUPS.length)}`);
for (const chance of [...new Set(checks.map((own) => own.chance))].sort()) {
  const cells = GROUPS.map(([, isIn]) => {
    const own = checks.filter((check) => check.chance === chance && isIn(check));
    return `${own.filter(({ isEnough }) => isEnough).length} of ${own.length}`;
  });
  console.log(`| ${Math.round(100 * chance)} of 100 | ${cells.join(' | ')} |`);
}
