import { createRequire } from 'node:module';
import { readPattern } from '@hidebound/intake';
import { report } from './common.mjs';

// A 60-page PDF, nothing said of how its pages lie: found out by lines that go on, or by labelled crosses.
const runs = Number(process.argv[3]);
const hasMarks = process.argv[4] === 'marks';
const PdfKit = createRequire(new URL('../../packages/render/package.json', import.meta.url))('pdfkit');

const MM = 72 / 25.4;
const COLUMNS = 6;
const ROWS = 10;
const PAPER = { width: 210, height: 297 };
const MARGIN = 10;
const OVERLAP = 10;
const WINDOW = { width: PAPER.width - 2 * MARGIN, height: PAPER.height - 2 * MARGIN };
const STEP = { x: WINDOW.width - OVERLAP, y: WINDOW.height - OVERLAP };
const WHOLE = { width: COLUMNS * STEP.x + OVERLAP, height: ROWS * STEP.y + OVERLAP };
const PITCH = { x: 83, y: 97 };

/** Invented pieces all over the whole, none like the next: a bowed outline, a dashed line within, holes. */
function drawPiece(doc, x, y, k) {
  const by = (share) => ((k * share) % 17) - 8;
  doc
    .moveTo(x, y)
    .bezierCurveTo(x + 20, y - 4 + 0.3 * by(3), x + 50, y + 4, x + 70, y + 0.3 * by(5))
    .bezierCurveTo(x + 74, y + 25, x + 62 + 0.5 * by(7), y + 50, x + 70, y + 80)
    .lineTo(x + 8, y + 82 + 0.4 * by(11))
    .bezierCurveTo(x - 3, y + 50, x + 4, y + 25 + by(2), x, y)
    .closePath()
    .undash()
    .stroke();
  doc
    .moveTo(x + 8, y + 12)
    .bezierCurveTo(x + 25, y + 8, x + 45, y + 20 + 0.5 * by(13), x + 60, y + 12)
    .lineTo(x + 58, y + 66)
    .dash(3, { space: 2 })
    .stroke()
    .undash();
  for (let hole = 0; hole < 6; hole++) doc.circle(x + 14 + 8 * hole, y + 40, 1.5).stroke();
}

function drawMarks(doc, isNear) {
  doc.lineWidth(0.2);
  for (let i = 0; i <= COLUMNS; i++) {
    for (let j = 0; j <= ROWS; j++) {
      const x = i * STEP.x + OVERLAP / 2;
      const y = j * STEP.y + OVERLAP / 2;
      if (!isNear(x - 5, y - 5, 10, 10)) continue;
      doc
        .moveTo(x - 3, y)
        .lineTo(x + 3, y)
        .stroke();
      doc
        .moveTo(x, y - 3)
        .lineTo(x, y + 3)
        .stroke();
      doc.circle(x, y, 1.5).stroke();
      doc.fontSize(2).text(`${String.fromCharCode(65 + i)}${j + 1}`, x + 1, y - 3, { lineBreak: false });
    }
  }
}

function drawPage(doc, left, top) {
  const isNear = (x, y, width, height) =>
    x < left + WINDOW.width && x + width > left && y < top + WINDOW.height && y + height > top;
  doc.addPage();
  doc.scale(MM).lineWidth(0.4);
  doc.rect(MARGIN, MARGIN, WINDOW.width, WINDOW.height).clip();
  doc.translate(MARGIN - left, MARGIN - top);
  let k = 0;
  for (let y = 15; y + PITCH.y < WHOLE.height; y += PITCH.y) {
    for (let x = 15; x + PITCH.x < WHOLE.width; x += PITCH.x) {
      k++;
      if (isNear(x - 10, y - 10, PITCH.x + 10, PITCH.y + 10)) drawPiece(doc, x, y, k);
    }
  }
  if (hasMarks) drawMarks(doc, isNear);
}

function tiledPdf() {
  return new Promise((done) => {
    const size = [PAPER.width * MM, PAPER.height * MM];
    const doc = new PdfKit({ size, margin: 0, autoFirstPage: false });
    const parts = [];
    doc.on('data', (bytes) => parts.push(bytes));
    doc.on('end', () => done(new Uint8Array(Buffer.concat(parts))));
    for (let page = 0; page < COLUMNS * ROWS; page++)
      drawPage(doc, (page % COLUMNS) * STEP.x, Math.floor(page / COLUMNS) * STEP.y);
    doc.end();
  });
}

const bytes = await tiledPdf();
const times = [];
let read;
for (let i = 0; i < runs; i++) {
  const started = performance.now();
  read = await readPattern(bytes, { file: 'tiled.pdf' });
  times.push((performance.now() - started) / 1000);
}
const joined = read.pages.filter(({ joinedBy }) => joinedBy === (hasMarks ? 'marks' : 'lines')).length;
const lines = read.pages.reduce((sum, page) => sum + page.lines.length, 0);
report(
  [[`${joined} of 60 pages, ${lines} lines`, times, 's']],
  `${joined} ${lines} ${read.pieces.length} ${read.strays.length}`,
);
