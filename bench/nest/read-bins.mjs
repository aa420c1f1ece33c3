// Square bins cut up without waste (`bins/`): all pieces of a file, to be laid on as many bins as the file has.
import { cleanRing, ringArea } from './rings.mjs';
import {
  angleRule,
  makeItem,
  makeProblem,
  makeSheet,
  oneSet,
  rectangle,
  selfContactNotes,
  turnsNamed,
} from './problem-parts.mjs';

/** Pieces are moved to begin at (0, 0): the place in the file is the answer. They keep the order of the file. */
export function readBins(name, json, { turns = 'fixed' } = {}) {
  const [width, height] = json.bin;
  const sheets = json.bins.map((_, i) => makeSheet(`bin ${i + 1}`, rectangle(width, height)));
  const pieces = json.bins.flatMap((bin, b) =>
    bin.map((pairs, i) => ({ id: `piece ${b + 1}-${i + 1}`, ring: atOrigin(cleanRing(pairs)) })),
  );
  const rule = angleRule(turnsNamed(turns));
  const problem = makeProblem({
    items: pieces.map(({ id, ring }) =>
      makeItem(id, ring, sheets, { angleRule: rule, value: ringArea(ring) }),
    ),
    setKinds: oneSet(pieces.map(({ id }) => [id, 1])),
    sheets,
    objective: { mode: 'placeAll', keepMm: [1, 1] },
  });
  return { name, problem, notes: selfContactNotes(pieces.map(({ id, ring }) => [id, ring])), optimum: 100 };
}

function atOrigin(ring) {
  const minX = Math.min(...ring.map(({ x }) => x));
  const minY = Math.min(...ring.map(({ y }) => y));
  return ring.map(({ x, y }) => ({ x: x - minX, y: y - minY }));
}
