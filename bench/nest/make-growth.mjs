// Random jobs of growing size (invented, seeded): how does the time to the first valid layout grow?
import { sampleProblem } from '@hidebound/geometry';

/** Pieces, on a hide whose area grows with them; hide corners, at a fixed number of pieces. */
const PIECES = [50, 100, 200, 400, 800];
const CORNERS = [100, 250, 500, 1000, 2000];

const BASE = { pieces: 100, corners: 200, lengthMm: 2200, halfWidthMm: 900, flaws: 50 };

/** Area of the pieces over the hide's net area. */
const SHARE = 0.45;

/** [series, size, maker] of each instance. */
export function growthInstances(seed) {
  return [
    ...PIECES.map((pieces) => ['pieces', pieces, () => growthJob(seed, `pieces-${pieces}`, { pieces })]),
    ...CORNERS.map((corners) => [
      'corners',
      corners,
      () => growthJob(seed, `corners-${corners}`, { corners }),
    ]),
  ];
}

function growthJob(seed, name, { pieces = BASE.pieces, corners = BASE.corners }) {
  const grow = Math.sqrt(pieces / BASE.pieces);
  const problem = sampleProblem(seed, {
    pieces,
    share: SHARE,
    // The same kinds of pieces at every size: what grows is their number.
    kinds: Math.min(pieces, BASE.pieces / 4),
    hide: {
      cut: 'hide',
      corners,
      lengthMm: BASE.lengthMm * grow,
      halfWidthMm: BASE.halfWidthMm * grow,
      flaws: Math.round((BASE.flaws * pieces) / BASE.pieces),
    },
  });
  return { name, problem, notes: [] };
}
