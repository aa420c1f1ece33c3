// What a layout is worth: one goodness (greater is better) for each kind of instance, and figures to print.
import { placedRings, usedUpArea } from '@hidebound/geometry';
import { checkAnswer, isProven } from '@hidebound/geometry/check';
import { createHash } from 'node:crypto';
import { clipToBox, ringArea, ringBox, ringDiameter } from './rings.mjs';

const MM2_PER_M2 = 1e6;

/** For `many`: how far from the sheet's edge the measured part begins, in diameters of the piece. */
const EDGE_DIAMETERS = 2;

/**
 * Strip: density in per cent of width times length, 0 unless every piece is laid.
 * Fill: area laid in per cent of the area asked for. Place all, on hides: area laid in per cent of the area used
 * up, times the share of the area asked for that is laid. Bins: area laid in per cent of the bins' area.
 * Many: density away from the sheet's edge in per cent of the densest double lattice.
 */
export function measure(instance, answer) {
  const { problem } = instance;
  const rings = placedRings(answer.placements, problem.items);
  const laid = rings.reduce((sum, ring) => sum + ringArea(ring), 0);
  const figures = { pieces: answer.placements.length, laidM2: laid / MM2_PER_M2 };
  return { ...figures, ...MEASURES[measureOf(instance)](instance, answer, rings, laid) };
}

export function measureOf({ kind, problem }) {
  return kind === 'leather' && problem.objective.mode === 'fill' ? 'fill' : kind;
}

const MEASURES = {
  strip: measureStrip,
  real: measureStrip,
  fill: (instance, _, __, laid) => ({ goodness: (100 * laid) / demandedArea(instance.problem) }),
  leather: measureUsedUp,
  growth: measureUsedUp,
  bins: ({ problem }, _, __, laid) => ({ goodness: (100 * laid) / sheetsArea(problem) }),
  many: measureMany,
};

function measureStrip({ problem }, answer, rings, laid) {
  const { minX, minY, maxY } = ringBox(problem.sheets[0].region.outer);
  const lengthMm = Math.max(...rings.flat().map(({ x }) => x)) - minX;
  const isWhole = answer.unplaced.length === 0 && rings.length > 0;
  return { lengthMm, goodness: isWhole ? (100 * laid) / (lengthMm * (maxY - minY)) : 0 };
}

function measureUsedUp({ problem }, answer, rings, laid) {
  const used = problem.sheets.map((sheet) => {
    const own = rings.filter((_, i) => answer.placements[i].sheet === sheet.id);
    return usedUpArea(sheet, own, problem.objective.keepMm).areaMm2;
  });
  const usedUp = used.reduce((sum, area) => sum + area, 0);
  const sheets = new Set(answer.placements.map(({ sheet }) => sheet)).size;
  const share = laid / demandedArea(problem);
  return {
    sheets,
    usedUpM2: usedUp / MM2_PER_M2,
    goodness: usedUp === 0 ? 0 : (100 * laid * share) / usedUp,
  };
}

function measureMany({ problem, lattice }, _, rings) {
  const box = ringBox(problem.sheets[0].region.outer);
  const off = EDGE_DIAMETERS * ringDiameter(problem.items[0].region.outer);
  const inner = {
    minX: box.minX + off,
    minY: box.minY + off,
    maxX: box.maxX - off,
    maxY: box.maxY - off,
  };
  const covered = rings.reduce((sum, ring) => sum + ringArea(clipToBox(ring, inner)), 0);
  const density = covered / ((inner.maxX - inner.minX) * (inner.maxY - inner.minY));
  return { density: 100 * density, goodness: (100 * density) / lattice };
}

/** Area of all copies that are asked for by number. */
export function demandedArea({ items, setKinds }) {
  const areaOf = new Map(items.map(({ id, region }) => [id, ringArea(region.outer)]));
  return setKinds.reduce((sum, { sets, members }) => {
    const own = members.reduce((area, { item, count }) => area + count * areaOf.get(item), 0);
    return sum + (sets === 'many' ? 0 : sets * own);
  }, 0);
}

export function demandedCount({ setKinds }) {
  return setKinds.reduce((sum, { sets, members }) => {
    const own = members.reduce((count, member) => count + member.count, 0);
    return sum + (sets === 'many' ? 0 : sets * own);
  }, 0);
}

export function sheetsArea({ sheets }) {
  return sheets.reduce(
    (sum, { region }) => [region.outer, ...region.openings].reduce((own, ring) => own + ringArea(ring), sum),
    0,
  );
}

/** The first broken rule in words, or undefined: proven. */
export function faultOf(problem, answer) {
  const violations = checkAnswer(problem, answer);
  if (isProven(violations)) return undefined;
  const [first] = violations.filter(({ accepted }) => !accepted);
  const measured = first.measured === undefined ? '' : ` (${first.measured} instead of ${first.required})`;
  return `${violations.length} broken: ${first.rule} at ${first.at?.item ?? first.other}${measured}`;
}

/** sha256 of the placements in a fixed order of keys. */
export function checksumOf({ placements }) {
  const rows = placements.map(({ item, set, copy, sheet, x, y, rotationDeg }) => {
    return [item, set, copy, sheet, x, y, rotationDeg];
  });
  return createHash('sha256').update(JSON.stringify(rows)).digest('hex');
}
