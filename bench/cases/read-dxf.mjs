import { readPatternDxf } from '@hidebound/intake';
import { report, seconds } from './common.mjs';

const runs = Number(process.argv[3]);
const BYTES = 20e6;

const pair = (code, value) => `${String(code).padStart(3)}\r\n${value}\r\n`;
const number = (n) => n.toFixed(6);
const place = (x, y, first = 10) =>
  pair(first, number(x)) + pair(first + 10, number(y)) + pair(first + 20, '0.0');

let handle = 256;
const entity = (kind, layer, body) =>
  pair(0, kind) +
  pair(5, (handle++).toString(16).toUpperCase()) +
  pair(100, 'AcDbEntity') +
  pair(8, layer) +
  body;

/** Corners of an invented outline at (x, y): a wavy upper edge and three straight ones. */
function corners(i, x, y) {
  const wave = Array.from({ length: 60 }, (_, k) => [x + k * 2.5, y + 100 + (1 + (i % 3)) * Math.sin(k / 4)]);
  return [...wave, [x + 150, y], [x, y]];
}

/** Every other piece as loose lines and arcs that must be chained, the others as polylines; with a seam and holes. */
function piece(i, x, y) {
  const outline = corners(i, x, y);
  const isLoose = i % 2 === 0;
  const edges = outline.map(([ax, ay], k) => {
    const [bx, by] = outline[(k + 1) % outline.length];
    return entity('LINE', 'OUTLINE', pair(100, 'AcDbLine') + place(ax, ay) + place(bx, by, 11));
  });
  const light = () =>
    entity(
      'LWPOLYLINE',
      'OUTLINE',
      pair(100, 'AcDbPolyline') +
        pair(90, outline.length) +
        pair(70, 1) +
        outline.map(([ax, ay]) => pair(10, number(ax)) + pair(20, number(ay)) + pair(42, '0.05')).join(''),
    );
  const seam = entity('LINE', 'STITCH', place(x + 5, y + 20) + place(x + 145, y + 20, 11));
  const holes = [20, 60, 100, 140].map((dx) =>
    entity('CIRCLE', 'PUNCH', place(x + dx, y + 40) + pair(40, '2.0')),
  );
  return [...(isLoose ? edges : [light()]), seam, ...holes].join('');
}

function bigDxf() {
  const header = [
    [0, 'SECTION'],
    [2, 'HEADER'],
    [9, '$ACADVER'],
    [1, 'AC1015'],
    [9, '$INSUNITS'],
    [70, 4],
    [0, 'ENDSEC'],
  ];
  const parts = [
    header.map(([code, value]) => pair(code, value)).join(''),
    pair(0, 'SECTION') + pair(2, 'ENTITIES'),
  ];
  for (let i = 0, length = 0; length < BYTES; i++) {
    const part = piece(i, (i % 60) * 220, Math.floor(i / 60) * 160);
    length += part.length;
    parts.push(part);
  }
  return [...parts, pair(0, 'ENDSEC'), pair(0, 'EOF')].join('');
}

const bytes = new TextEncoder().encode(bigDxf());
const times = [];
let pieces = 0;
for (let i = 0; i < runs; i++) {
  const run = seconds(() => readPatternDxf(bytes, { file: 'big.dxf' }));
  times.push(run.seconds);
  pieces = run.result.pieces.length;
}
report([[`${(bytes.length / 1e6).toFixed(1)} MB, ${pieces} pieces`, times, 's']], String(pieces));
