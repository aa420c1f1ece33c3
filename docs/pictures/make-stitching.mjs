/**
 * Makes the picture of docs/stitching.md anew, from the built packages:
 *
 *     pnpm build && node docs/pictures/make-stitching.mjs
 */
import { writeFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { curveFromPolyline, flattenCurve } from '../../packages/geometry/dist/index.js';
import { walkLine } from '../../packages/leather/dist/stitch/line-walk.js';
import { stitchMarks } from '../../packages/leather/dist/stitch/marks-along.js';
import { matchedMarks } from '../../packages/leather/dist/stitch/match-lines.js';

const TARGET = join(dirname(fileURLToPath(import.meta.url)), 'stitching.svg');
const PX = 5;
const INK = '#3b3128';
const LEATHER = '#efe0c6';
const THREAD = '#2d6fa3';
const RULE = {
  pitchMm: 4,
  with: 'iron',
  gives: 'both ends',
  adjustShare: 0.1,
  cornerDeg: 30,
  endGapMm: 0,
};

const px = (mm) => Number((mm * PX).toFixed(1));
const pathData = (curve) =>
  flattenCurve(curve, 0.02)
    .map(({ x, y }, i) => `${i === 0 ? 'M' : 'L'}${px(x)} ${px(y)}`)
    .join('');
const shift = (curve, dx, dy) => {
  const move = (p) => ({ x: p.x + dx, y: p.y + dy });
  const segments = curve.segments.map((segment) =>
    Object.fromEntries(
      Object.entries(segment).map(([key, value]) => [key, key === 'kind' ? value : move(value)]),
    ),
  );
  return { ...curve, start: move(curve.start), segments };
};

function leather(x, y, width, height) {
  return `<rect x="${px(x)}" y="${px(y)}" width="${px(width)}" height="${px(height)}" rx="6" fill="${LEATHER}" stroke="${INK}"/>`;
}

function words(x, y, text, more = '') {
  return `<text x="${px(x)}" y="${px(y)}" ${more}>${text}</text>`;
}

function tooth({ at, angleDeg }) {
  const turn = ((angleDeg - 45) * Math.PI) / 180;
  const [dx, dy] = [Math.cos(turn) * 0.9, Math.sin(turn) * 0.9];
  return `<path d="M${px(at.x - dx)} ${px(at.y - dy)}L${px(at.x + dx)} ${px(at.y + dy)}" stroke="${THREAD}" stroke-width="2.4"/>`;
}

function dot({ at, isCorner }) {
  const fill = isCorner ? '#6d1a12' : THREAD;
  return `<circle cx="${px(at.x)}" cy="${px(at.y)}" r="${isCorner ? 4 : 2.6}" fill="${fill}"/>`;
}

function marked(curve, marks, tool) {
  return [
    `<path d="${pathData(curve)}" fill="none" stroke="${THREAD}" stroke-width="0.8"/>`,
    ...marks.holes.map(tool === 'iron' ? tooth : dot),
  ].join('');
}

/** Every fifth hole's number, beside the line. */
function numbers(marks, dy) {
  return marks.holes
    .map(({ at }, i) => [at, i + 1])
    .filter(([, number]) => number === 1 || number % 5 === 0)
    .map(([at, number]) => words(at.x, at.y + dy, String(number), 'text-anchor="middle" font-size="11"'))
    .join('');
}

const bent = curveFromPolyline(
  [
    { x: 9, y: 16.5 },
    { x: 9, y: 39 },
    { x: 58, y: 39 },
  ],
  false,
);

function single(dx, tool, title) {
  const curve = shift(bent, dx, 0);
  const marks = stitchMarks(curve, { ...RULE, with: tool }, { piece: 'front', line: 'edge' });
  const { usedPitchMm: used, startGapMm, endGapMm } = marks;
  const note =
    tool === 'iron'
      ? `${marks.holes.length} holes; gaps of ${startGapMm.toFixed(2)} and ${endGapMm.toFixed(2)} mm; none in the corner`
      : `${marks.holes.length} holes, ${used.min.toFixed(2)} and ${used.max.toFixed(2)} mm apart, one in the corner`;
  return [
    words(dx + 4, 6, title, 'font-weight="bold"'),
    leather(dx + 4, 9, 59, 35),
    marked(curve, marks, tool),
    words(dx + 4, 48.5, note, 'font-size="11.5"'),
  ].join('');
}

/** A curved edge sewn to a straight one that is a little longer. */
function seam(top) {
  const curved = {
    start: { x: 8, y: top + 9 },
    segments: [
      { kind: 'line', to: { x: 60, y: top + 9 } },
      {
        kind: 'cubic',
        handle1: { x: 85, y: top + 9 },
        handle2: { x: 95, y: top + 20 },
        to: { x: 122, y: top + 20 },
      },
    ],
    closed: false,
  };
  const length = walkLine(curved).lengthMm + 1.6;
  const straight = curveFromPolyline(
    [
      { x: 8, y: top + 36 },
      { x: 8 + length, y: top + 36 },
    ],
    false,
  );
  const { marks } = matchedMarks([curved, straight].map(walkLine), { ...RULE, with: 'awl' });
  return [
    words(4, top + 1, 'Sewn together: the same number of holes on both lines', 'font-weight="bold"'),
    leather(4, top + 4, 126, 21),
    marked(curved, marks[0], 'awl'),
    numbers(marks[0], -1.8),
    leather(4, top + 31, 126, 10),
    marked(straight, marks[1], 'awl'),
    numbers(marks[1], -1.8),
    words(
      4,
      top + 46,
      `${marks[0].holes.length} holes each; ${marks[0].usedPitchMm.mean.toFixed(2)} mm above, ${marks[1].usedPitchMm.mean.toFixed(2)} mm below: ${marks[1].gave.changeMm.toFixed(1)} mm are gathered in`,
      'font-size="11.5"',
    ),
  ].join('');
}

const [width, height] = [px(134), px(105)];
const svg = [
  `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" role="img" font-family="DejaVu Sans, Verdana, sans-serif" font-size="13" fill="${INK}">`,
  '<title>Stitch marks with an iron and with an awl, and the same number of holes on two lines that are sewn together</title>',
  `<rect width="${width}" height="${height}" rx="6" fill="#fbf9f5"/>`,
  single(0, 'iron', 'With an iron of 4 mm: the pitch stays'),
  single(67, 'awl', 'With an awl at 4 mm: the pitch gives'),
  seam(56),
  '</svg>',
  '',
].join('\n');
writeFileSync(TARGET, svg);
console.log(`${relative(process.cwd(), TARGET)}: ${Math.round(svg.length / 1000)} kB`);
