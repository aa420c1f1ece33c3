// The whole job on the demo's order, from choosing leather to a proven layout, its sheets, its price and its offcuts, in demo-out.
// With "photo", the way from a photo of a hide to its cutting sheet instead; with "table", the browser app on the same job.
import { spawnSync } from 'node:child_process';
import { copyFileSync, mkdirSync, readdirSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { demoFromPhoto } from './demo-photo.mjs';
import { demoOnTable } from './demo-table.mjs';

/** Long enough for a good layout, short enough to wait for. */
const SECONDS = 20;
/** Few, so that the demo stays short; without --trials the command itself makes many more. */
const TRIALS = 2;

const root = join(dirname(fileURLToPath(import.meta.url)), '..');
const main = join(root, 'packages', 'cli', 'dist', 'main.js');
const demo = join('fixtures', 'demo');
const out = 'demo-out';

/** Runs one command from the checkout's root and gives its result as data; ends here if it fails. */
function hidebound(...args) {
  const run = spawnSync(process.execPath, [main, ...args, '--json'], {
    cwd: root,
    stdio: ['ignore', 'pipe', 'inherit'],
    encoding: 'utf8',
    maxBuffer: 1 << 28,
  });
  if (run.status === 0) return JSON.parse(run.stdout).result;
  console.error(`\nThe demo stops here: "hidebound ${args[0]}" ended with ${run.status}.`);
  for (const { severity, sentence } of findingsOf(run.stdout)) {
    if (severity === 'error') console.error(`  ${sentence}`);
  }
  process.exit(run.status ?? 1);
}

function findingsOf(stdout) {
  try {
    return JSON.parse(stdout).diagnostics ?? [];
  } catch {
    return [];
  }
}

const percent = (share) => `${(share * 100).toFixed(1)} %`;
const squareMetres = (mm2) => `${(mm2 / 1e6).toFixed(3)} m²`;
const inOut = (name) => join(out, name);

/** "3 of natural double shoulder, enough in 90 of 100, 331.20 to 414.00 EUR". */
function buyWords([best]) {
  const level = best.levels.find(({ inHundred, hides }) => inHundred === 90 && hides !== undefined);
  if (level === undefined) return `no answer for ${best.name}`;
  const { hides, cost: sum } = level;
  const price = sum === undefined ? '' : `, ${sum.from.amount} to ${sum.to.amount} ${sum.to.currency}`;
  return `${hides} of ${best.name}, enough in 90 of 100${price}`;
}

/** The demo's own hides as a stock, as they were before anything was cut from them. */
function fillStock(folder) {
  rmSync(join(root, folder), { recursive: true, force: true });
  mkdirSync(join(root, folder));
  for (const name of ['side', 'shoulder', 'bend'].map((each) => `${each}.hide.json`)) {
    copyFileSync(join(root, demo, name), join(root, folder, name));
  }
}

mkdirSync(join(root, out), { recursive: true });
if (process.argv.includes('table')) process.exit(await demoOnTable({ root, out, main }));
if (process.argv.includes('photo')) {
  await demoFromPhoto({ root, out, hidebound, seconds: SECONDS });
  process.exit(0);
}

const patterns = readdirSync(join(root, demo, 'patterns')).map((name) => join(demo, 'patterns', name));
const layout = inOut('bicycle-goods.layout.json');
const pdf = inOut('bicycle-goods.sheet.pdf');

console.log('A small co-operative workshop makes bicycle goods (all data is invented).\n');
const { files } = hidebound('pieces', ...patterns, '--picture', inOut('pieces.svg'));
const pieces = files.flatMap((file) => file.pieces);
console.log(`1. Patterns: ${pieces.length} pieces read from ${files.length} drawings.`);

const tracing = join(demo, 'shoulder-traced.svg');
const hide = inOut('shoulder-traced.hide.json');
const traced = hidebound('hide', tracing, '--out', hide, '--picture', inOut('shoulder-traced.svg'));
const { areas } = traced;
console.log(
  `2. A hide, traced: ${squareMetres(areas.grossMm2)}, ${traced.hide.flaws.length} flaws, ${squareMetres(areas.usableMm2)} of it usable.`,
);

const order = join(demo, 'bicycle-goods.order.yaml');
const choosing = inOut('bicycle-goods.choosing.pdf');
const suited = hidebound('suit', order, '--pdf', choosing);
const skived = suited.pieces.filter(({ fits }) => !fits.some(({ kind }) => kind === 'fits')).length;
console.log(
  `3. Choosing: ${suited.pieces.length} kinds of piece, ${suited.hides.length} hides; ${skived} to be skived.`,
);

const buying = inOut('bicycle-goods.buying.pdf');
const bought = hidebound('buy', order, '--trials', String(TRIALS), '--pdf', buying);
console.log(`4. Buying, if there were no hides (${TRIALS} trial layouts of each kind only):`);
for (const { leathers, kinds } of bought.purchases)
  console.log(`   ${leathers.join(' and ')}: ${buyWords(kinds)}`);

console.log(`5. Laying the order for ${SECONDS} seconds:`);
const lay = hidebound('lay', order, '--seconds', String(SECONDS), '--out', layout);
console.log(`   ${lay.placed} of ${lay.asked} pieces are laid.`);

const check = hidebound('check', layout);
console.log(`6. Proven: ${check.pieces} pieces on ${check.hides} hides keep every rule.`);

// The layout does not lie beside the demo's workshop file.
const values = ['--workshop', join(demo, 'workshop.yaml')];
const preparing = inOut('bicycle-goods.preparing.pdf');
const plan = hidebound('prepare', layout, ...values, '--pdf', preparing);
const hours = (min) => `${Math.round(min / 60)} h`;
console.log(
  `7. Preparing: ${plan.jobs.length} leathers, ${hours(plan.shortest.endMin)} to ${hours(plan.timetable.endMin)}; a card for each.`,
);

const sheetArgs = ['--pdf', pdf, '--page-svg', inOut('bicycle-goods.page.svg'), '--page', 'A3'];
const trueScale = ['--svg', inOut('bicycle-goods.svg')];
const { written } = hidebound('sheet', layout, ...sheetArgs, ...trueScale);
console.log('8. The cutting sheet is made.');

const cards = inOut('bicycle-goods.pieces.pdf');
const tiles = inOut('bicycle-goods.side.pdf');
const cardPages = hidebound('template', layout, '--pieces', '--pdf', cards).pages.length;
const tilePages = hidebound('template', layout, '--hide', '1', '--pdf', tiles).pages.length;
console.log(`9. Templates: the pieces on ${cardPages} pages, the side on ${tilePages}.`);

const cuts = hidebound('cutfile', layout, '--dxf', inOut('bicycle-goods.dxf'), '--frame');
const cutMetres = cuts.hides.reduce((sum, { cutMm }) => sum + cutMm, 0) / 1000;
console.log(`10. Cut files: ${cutMetres.toFixed(0)} m to cut on ${cuts.hides.length} hides.`);

const setting = inOut('bicycle-goods.setting-out.pdf');
const pieceTable = inOut('bicycle-goods.pieces.csv');
hidebound('setout', layout, '--pdf', setting);
const { pieces: listed } = hidebound('list', layout, '--csv', pieceTable);
console.log(`11. The sheet for setting out is made, and a table of ${listed.length} pieces.`);

const costs = inOut('bicycle-goods.cost.pdf');
const { cost } = hidebound('cost', layout, ...values, '--pdf', costs);
const { low, high } = cost.sum;
console.log(`12. Costs: the order comes to ${low.amount} to ${high.amount} ${cost.currency} with tax.`);

const stock = inOut('stock');
const stockSheet = inOut('stock.pdf');
fillStock(stock);
hidebound('offcuts', stock, '--take', layout);
const kept = hidebound('offcuts', stock, '--pdf', stockSheet).hides;
console.log(`13. Kept: ${kept.length} offcuts for the next job.`);

const { grossYield, usableYield } = check.yield;
console.log(`\nGross yield ${percent(grossYield)}, usable yield ${percent(usableYield)}.\n`);
console.log(`Layout          ${layout}`);
console.log(`Cutting sheet   ${pdf}`);
for (const file of cuts.written) console.log(`Cut file        ${file}`);
for (const file of written.filter((name) => name !== pdf)) {
  console.log(`${file.includes('.page.') ? '  page          ' : 'At true scale   '}${file}`);
}
console.log(`Templates       ${cards}`);
console.log(`                ${tiles}`);
console.log(`Setting out     ${setting}`);
console.log(`Piece list      ${pieceTable}`);
for (const [name, file] of [
  ['Choosing', choosing],
  ['Buying', buying],
  ['Preparing', preparing],
  ['Costs', costs],
  ['Offcuts', stockSheet],
]) {
  console.log(`${name.padEnd(16)}${file}`);
}
