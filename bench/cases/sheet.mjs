import { startNest } from '@hidebound/geometry';
import { drawCuttingSheets, writePdf, writeSvg } from '@hidebound/render';
import { loadFontBook } from '@hidebound/render/node';
import { report } from './common.mjs';
import { demoJob, demoLayout } from './problem.mjs';

const runs = Number(process.argv[3]);
const job = demoJob(1);
const run = startNest(job.problem.problem);
while (run.best() === undefined) run.advance();
const layoutTimes = [];
const times = [];
let pdf;
for (let i = 0; i < runs; i++) {
  const began = performance.now();
  const layout = demoLayout(job, run.best());
  const started = performance.now();
  const fonts = loadFontBook();
  const sheets = drawCuttingSheets({
    layout,
    hides: job.hides.map(({ hide }) => hide),
    page: 'A4',
    side: 'grain',
    fonts,
  });
  sheets.forEach((sheet) => writeSvg(sheet));
  pdf = await writePdf(sheets, { fonts, title: 'bench' });
  times.push((performance.now() - started) / 1000);
  layoutTimes.push((started - began) / 1000);
}
report(
  [
    ['answer to layout', layoutTimes, 's'],
    ['layout to sheet', times, 's'],
  ],
  pdf,
);
