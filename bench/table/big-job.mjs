// A big job for measuring: 300 pieces of the demo's patterns, laid by the engine on a hide with 2,000 corners.
// Invented and seeded: the same job each time, but for the photo's bytes.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { sampleHide, startNest } from '@hidebound/geometry';
import { readPatternSvg } from '@hidebound/intake';
import {
  DEFAULT_WORKSHOP,
  completeOrder,
  layoutFrom,
  nestProblemFor,
  parseHide,
  parseOrder,
  resolveOrder,
  resolvePieces,
  writeHide,
  writeJobBundle,
  writeLayout,
} from '@hidebound/leather';

const PATTERNS = join(import.meta.dirname, '../../fixtures/demo/patterns');
const ORDER = 'big.order.yaml';
const HIDE = 'big.hide.json';
const PHOTO = 'big-photo.jpg';
const CORNERS = 2000;
const FLAWS = 50;
const SETS = 50;

/** Name, its pattern's file, its piece in there, copies of a set: six pieces a set. */
const PIECES = [
  ['grip', 'grip-wrap.svg', 'grip', 2],
  ['pocket flap', 'saddlebag-pockets.svg', 'flap', 1],
  ['strap', 'pump-strap.svg', 'pump-strap', 1],
  ['cradle', 'pump-strap.svg', 'pump-cradle', 1],
  ['protector', 'tube-protector.svg', 'tube-protector', 1],
];

/** The picture that is asked for: 12 million pixels over the whole hide. */
export const PICTURE = { width: 4000, height: 3000, pxPerMm: 1.45, origin: { x: -90, y: -1035 } };

/** The job as one file, with the photo's bytes as given. */
export function bigJob(photoBytes) {
  const hide = bigHide();
  const { order, layout } = bigLayout(hide);
  const files = [
    { path: HIDE, kind: 'hide', encoding: 'utf8', content: writeHide(hide) },
    { path: ORDER, kind: 'order', encoding: 'utf8', content: order },
    { path: 'big.layout.json', kind: 'layout', encoding: 'utf8', content: writeLayout(layout) },
    { path: PHOTO, kind: 'picture', encoding: 'base64', content: Buffer.from(photoBytes).toString('base64') },
    ...[...new Set(PIECES.map(([, file]) => file))].map((file) => ({
      path: `patterns/${file}`,
      kind: 'pattern',
      encoding: 'utf8',
      content: patternText(file),
    })),
  ];
  return {
    text: writeJobBundle({ name: 'Big job', files }),
    pieces: layout.placements.length,
    corners: hide.outline.segments.length,
    flaws: hide.flaws.length,
  };
}

function bigHide() {
  const { region } = sampleHide(7, {
    cut: 'hide',
    lengthMm: 2500,
    halfWidthMm: 1020,
    corners: CORNERS,
    flaws: 0,
  });
  const points = region.outer;
  const flaws = Array.from({ length: FLAWS }, (_, i) => ({
    id: `f${i + 1}`,
    kind: 'scar',
    side: 'grain',
    shape: { kind: 'point', at: [400 + 36 * i, ((397 * i) % 900) - 450], radiusMm: 4 },
  }));
  const pair = ({ x, y }) => [round(x), round(y)];
  const file = {
    format: 'hidebound/hide@1',
    id: 'big',
    cut: 'whole hide',
    outline: {
      start: pair(points.at(-1)),
      segments: points.map((point) => ({ to: pair(point) })),
      closed: true,
    },
    openings: [],
    backbone: [
      [40, 0],
      [2400, 0],
    ],
    tightness: [],
    zones: [],
    flaws,
    candidates: [],
    unsureEdges: [],
    leather: { tannage: 'vegetable', temper: 'firm', thickness: { minMm: 2, maxMm: 3 }, readings: [] },
    area: {},
    state: 'on hand',
    photo: {
      file: PHOTO,
      pxPerMm: PICTURE.pxPerMm,
      origin: [PICTURE.origin.x, PICTURE.origin.y],
      scaledBy: 'four reference sheets',
      errorMm: 1,
      errorsAt: [],
      hideStrokes: [],
      floorStrokes: [],
    },
    notes: 'Invented.',
  };
  return parseHide(JSON.stringify(file), { file: HIDE });
}

function bigLayout(hide) {
  const order = orderText();
  const complete = completeOrder(parseOrder(order, { file: ORDER }), DEFAULT_WORKSHOP, undefined, {
    file: ORDER,
  });
  const resolved = resolveOrder(complete);
  const { pieces } = resolvePieces(resolved, (file) =>
    readPatternSvg(patternText(file.replace('patterns/', '')), { file, reading: { file, roles: [] } }),
  );
  const hides = [{ file: HIDE, hide }];
  const job = { order: resolved, pieces, hides };
  const made = nestProblemFor({ ...job, budget: { seed: 1, streams: 1 } });
  const run = startNest(made.problem);
  // The first layout will do: where pieces lie does not matter here, only that none lies on another.
  while (run.best() === undefined) run.advance();
  const answer = run.best();
  const origin = { version: 'bench', seed: 1, streams: 1 };
  return { order, layout: layoutFrom({ ...job, problem: made, answer, origin }) };
}

function orderText() {
  const pieces = PIECES.map(
    ([name, file, piece, count]) =>
      `      - { name: ${name}, leather: body, part: tab, pattern: patterns/${file}, piece: ${piece}, count: ${count}, direction: free, looks: { face: C, rest: C } }`,
  );
  return `format: hidebound/order@1
name: Big job
version: 1
date: "2026-03-02"
leathers:
  body: { tannage: vegetable, temper: firm, hides: [${HIDE}] }
cutting: { method: hand knife, gap: 2, edge: 5, void: 2, kerf: 0 }
table: { width: 2600, length: 3000 }
useFrom: tail
mode: place all
keep: [150, 300]
articles:
  - name: small goods
    goods: tool roll
    sets: ${SETS}
    keepTogether: nothing
    pieces:
${pieces.join('\n')}
`;
}

const patternText = (file) => readFileSync(join(PATTERNS, file), 'utf8');
const round = (value) => Math.round(value * 1000) / 1000;
