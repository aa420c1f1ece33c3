// Strip instances (`strip/` and `real/`): scaled so that the strip is 1,000 mm wide, with an open length.
import { cleanRing, ringArea, ringDiameter } from './rings.mjs';
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

const STRIP_WIDTH_MM = 1000;

/** The longest strip that is offered: a layout of a third of full density, and two pieces more. */
const LENGTH_SHARE = 3;
const LENGTH_PIECES = 2;

/** `json` in any of the three forms of these folders. Options: `turns`, for dissections, which tell no angles. */
export function readStrip(name, json, { turns = 'fixed' } = {}) {
  const { width, pieces } = stripPieces(json, turnsNamed(turns));
  const scale = STRIP_WIDTH_MM / width;
  const shapes = pieces.map((piece) => ({ ...piece, ring: cleanRing(piece.pairs, { scale }) }));
  const area = shapes.reduce((sum, { ring, demand }) => sum + demand * ringArea(ring), 0);
  const longest = Math.max(...shapes.map(({ ring }) => ringDiameter(ring)));
  const length = Math.ceil((LENGTH_SHARE * area) / STRIP_WIDTH_MM + LENGTH_PIECES * longest);
  const sheets = [makeSheet('strip', rectangle(length, STRIP_WIDTH_MM), { openLength: true })];
  const problem = makeProblem({
    items: shapes.map(({ id, ring, allowedDeg }) => {
      return makeItem(id, ring, sheets, { angleRule: angleRule(allowedDeg), value: ringArea(ring) });
    }),
    setKinds: oneSet(shapes.map(({ id, demand }) => [id, demand])),
    sheets,
    objective: { mode: 'strip', keepMm: [1, 1] },
  });
  const notes = selfContactNotes(shapes.map(({ id, ring }) => [id, ring]));
  return { name, problem, notes, ...(json.container === undefined ? {} : { optimum: 100 }) };
}

function stripPieces(json, turnsDeg) {
  if (json.container !== undefined) return dissection(json, turnsDeg);
  const pieces = json.items.map((item, i) => ({
    id: `piece ${i}`,
    demand: item.demand,
    allowedDeg: item.rotations ?? item.allowed_orientations,
    pairs: item.polygon ?? item.shape.data,
  }));
  return { width: json.strip_width ?? json.strip_height, pieces };
}

/** The container's height is the strip's width. Each piece may be turned as the option says, from as it is drawn. */
function dissection(json, turnsDeg) {
  const heights = json.container.map(([, y]) => y);
  const pieces = json.pieces_in_solution.map((pairs, i) => {
    return { id: `piece ${i}`, demand: 1, allowedDeg: turnsDeg, pairs };
  });
  return { width: Math.max(...heights) - Math.min(...heights), pieces };
}
