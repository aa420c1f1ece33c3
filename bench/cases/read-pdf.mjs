import { createRequire } from 'node:module';
import { readPattern } from '@hidebound/intake';
import { report } from './common.mjs';

const runs = Number(process.argv[3]);
const PdfKit = createRequire(new URL('../../packages/render/package.json', import.meta.url))('pdfkit');

const COLUMNS = 6;
const ROWS = 10;
const PAGE = { width: 595, height: 842 };
const MARGIN = 20;
/** What each page shows of the whole. */
const TILE = { width: PAGE.width - 2 * MARGIN, height: PAGE.height - 2 * MARGIN };
const SPACING = 150;

/** Invented pieces in a grid over all pages: a waved outline, a dashed line within, four holes, a name. */
function drawPiece(doc, x, y, name) {
  doc.moveTo(x, y);
  for (let k = 0; k < 24; k++)
    doc.bezierCurveTo(x + 5 * k + 2, y - 3, x + 5 * k + 3, y + 3, x + 5 * k + 5, y);
  doc
    .lineTo(x + 120, y + 110)
    .lineTo(x, y + 110)
    .closePath()
    .undash()
    .stroke();
  doc
    .rect(x + 8, y + 8, 104, 94)
    .dash(3, { space: 2 })
    .stroke()
    .undash();
  for (const [dx, dy] of [
    [20, 20],
    [100, 20],
    [20, 90],
    [100, 90],
  ])
    doc.circle(x + dx, y + dy, 3).stroke();
  doc.text(name, x + 30, y + 50, { lineBreak: false });
}

/** Sixty pages that each draw all pieces, or only those that reach onto them, clipped to what the page shows. */
function tiledPdf(isWhole) {
  return new Promise((done) => {
    const doc = new PdfKit({ size: [PAGE.width, PAGE.height], margin: 0, autoFirstPage: false });
    const parts = [];
    doc.on('data', (bytes) => parts.push(bytes));
    doc.on('end', () => done(new Uint8Array(Buffer.concat(parts))));
    for (let page = 0; page < COLUMNS * ROWS; page++) {
      const left = (page % COLUMNS) * TILE.width;
      const top = Math.floor(page / COLUMNS) * TILE.height;
      doc.addPage().lineWidth(0.5).fontSize(9);
      doc.save().rect(MARGIN, MARGIN, TILE.width, TILE.height).clip();
      doc.translate(MARGIN - left, MARGIN - top);
      drawPieces(doc, isWhole ? undefined : { left, top });
      doc.restore();
    }
    doc.end();
  });
}

function drawPieces(doc, page) {
  for (let y = 15; y + 125 < ROWS * TILE.height; y += SPACING) {
    for (let x = 15; x + 125 < COLUMNS * TILE.width; x += SPACING) {
      const isThere =
        page === undefined ||
        (x < page.left + TILE.width &&
          x + 120 > page.left &&
          y - 5 < page.top + TILE.height &&
          y + 110 > page.top);
      if (isThere) drawPiece(doc, x, y, `p ${x} ${y}`);
    }
  }
}

const rows = [];
let outcome = '';
for (const [label, isWhole] of [
  ['own lines', false],
  ['whole drawing', true],
]) {
  const bytes = await tiledPdf(isWhole);
  const times = [];
  let read;
  for (let i = 0; i < runs; i++) {
    const started = performance.now();
    // The grid is said, so that this measures reading and joining and not the search for the pages' places.
    read = await readPattern(bytes, {
      file: 'tiled.pdf',
      reading: { file: 'tiled.pdf', roles: [], pages: { join: 'apart' } },
    });
    times.push((performance.now() - started) / 1000);
  }
  const lines = read.pages.reduce((sum, page) => sum + page.lines.length, 0);
  rows.push([`${label}: ${(bytes.length / 1e6).toFixed(1)} MB, ${lines} lines`, times, 's']);
  outcome += `${lines} ${read.pieces.length} `;
}
report(rows, outcome);
