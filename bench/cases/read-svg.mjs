import { readPatternSvg } from '@hidebound/intake';
import { report, seconds } from './common.mjs';

const runs = Number(process.argv[3]);

/** Invented pieces in a grid: rounded outlines of curves and lines with stitch lines and punches, until 5 MB. */
function bigSvg() {
  const parts = [
    '<svg xmlns="http://www.w3.org/2000/svg" width="4000mm" height="40000mm" viewBox="0 0 4000 40000">',
  ];
  let length = 0;
  for (let i = 0; length < 5e6; i++) {
    const x = (i % 18) * 220 + 10;
    const y = Math.floor(i / 18) * 160 + 10;
    const part = pieceMarkup(i, x, y);
    length += part.length;
    parts.push(part);
  }
  return [...parts, '</svg>'].join('\n');
}

function pieceMarkup(i, x, y) {
  const waves = Array.from({ length: 40 }, (_, k) => `c 1.25 -${1 + (k % 3)} 2.5 ${1 + (k % 3)} 4 0`).join(
    ' ',
  );
  const punches = [20, 60, 100, 140].map((dx) => `<circle cx="${x + dx}" cy="${y + 40}" r="2"/>`).join('');
  return `<g id="piece-${i}" fill="none" stroke="#000"><path d="M ${x} ${y} ${waves} l 0 110 l -160 0 z"/><path stroke-dasharray="3 2" d="M ${x + 5} ${y + 20} l 150 0 l 0 80 l -150 0"/>${punches}</g>`;
}

const text = bigSvg();
const bytes = new TextEncoder().encode(text);
const times = [];
let pieces = 0;
for (let i = 0; i < runs; i++) {
  const run = seconds(() => readPatternSvg(bytes, { file: 'big.svg' }));
  times.push(run.seconds);
  pieces = run.result.pieces.length;
}
report([[`${(bytes.length / 1e6).toFixed(1)} MB, ${pieces} pieces`, times, 's']], String(pieces));
