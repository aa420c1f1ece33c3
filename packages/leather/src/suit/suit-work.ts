import type { ThicknessRange } from '../model/marks.js';
import type { ResolvedPiece } from '../model/order.js';
import type { LayablePiece } from '../model/piece.js';
import type { Workshop } from '../model/workshop.js';
import { figureOf, middleOf } from '../workshop/figures.js';
import { SUIT } from './suit-figures.js';
import type { SuitWork, WantedLeather } from './suit-model.js';
import type { ThicknessFit } from './thickness-fit.js';

export interface WorkFor {
  readonly piece: Pick<ResolvedPiece, 'from' | 'layers' | 'part' | 'count'>;
  readonly shape: LayablePiece['shape'];
  readonly wanted: WantedLeather;
  readonly fit: ThicknessFit;
  readonly workshop: Pick<Workshop, 'figures'>;
}

/** What is done to a piece of this leather: glued up, skived all over, its edges, its folds. */
export function suitWork({ piece, shape, wanted, fit, workshop }: WorkFor): SuitWork[] {
  const range = wanted.thickness?.value;
  const worked = finishedThickness(fit, wanted);
  const layers = fit.layers ?? piece.layers;
  const turnedMm = middleOf(figureOf(workshop, SUIT.turnedEdge).value);
  const work: SuitWork[] = [];
  if (fit.skivedFromMm !== undefined && range !== undefined) {
    work.push({
      kind: 'all over',
      fromMm: fit.skivedFromMm,
      byMm: fit.skivedFromMm - range.maxMm,
      to: range,
    });
  }
  if (layers > 1) work.push({ kind: 'layers', count: layers });
  if (worked === undefined) return work;
  if (
    wanted.needs.includes('turned edges') &&
    worked.maxMm > figureOf(workshop, SUIT.turnsUnskived).value.max
  ) {
    const widthMm = middleOf(figureOf(workshop, SUIT.turnedEdgeWidth).value);
    work.push({ kind: 'turned edges', widthMm, toMm: turnedMm });
  }
  if (shape.skiveLines.length > 0) {
    work.push({ kind: 'drawn lines', count: shape.skiveLines.length, toMm: turnedMm });
  }
  if (worked.maxMm > figureOf(workshop, SUIT.foldsUnskived).value.max) {
    const { min, max } = figureOf(workshop, SUIT.foldTaper).value;
    const toMm = (worked.maxMm * middleOf(figureOf(workshop, SUIT.fold).value)) / 100;
    if (shape.foldLines.length > 0) work.push({ kind: 'folds', count: shape.foldLines.length, toMm });
    if (isBuckleStrap(piece)) work.push({ kind: 'buckle fold', toMm, taper: [min, max] });
  }
  if (isStacked(piece, wanted)) {
    const { min, max } = figureOf(workshop, SUIT.thinnest).value;
    work.push({ kind: 'covered bottoms', to: { minMm: min, maxMm: max } });
  }
  return work;
}

/** Several pockets of goods whose pockets have a row of their own, as wallets: they lie on each other. */
function isStacked({ part, count }: WorkFor['piece'], { partRow }: WantedLeather): boolean {
  return part === 'pocket' && count > 1 && partRow !== undefined;
}

/** A strap with a slot for a buckle's tongue is folded there. */
function isBuckleStrap({ from }: Pick<ResolvedPiece, 'from'>): boolean {
  return from.kind === 'strap' && from.strap.slot !== undefined;
}

/** Of one layer once it is skived, mm; absent: not known. */
export function finishedThickness(
  { span, skivedFromMm }: Pick<ThicknessFit, 'span' | 'skivedFromMm'>,
  { thickness }: Pick<WantedLeather, 'thickness'>,
): ThicknessRange | undefined {
  if (span === undefined) return undefined;
  const wanted = thickness?.value;
  if (wanted === undefined) return span;
  if (skivedFromMm !== undefined) {
    return { minMm: Math.max(wanted.minMm, Math.min(span.minMm, wanted.maxMm)), maxMm: wanted.maxMm };
  }
  const within = { minMm: Math.max(span.minMm, wanted.minMm), maxMm: Math.min(span.maxMm, wanted.maxMm) };
  return within.minMm <= within.maxMm ? within : span;
}
