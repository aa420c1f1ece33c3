import type { Diagnostic } from '../model/diagnostic.js';
import type { ResolvedOrder, ResolvedPiece } from '../model/order.js';
import type { Workshop } from '../model/workshop.js';
import { trimmed } from '../units/length.js';
import { figureOf } from '../workshop/figures.js';
import { listWords } from '../words/sentence.js';
import { reasonsText, suitRemarkWords, thicknessWords } from '../words/suit.js';
import type { FindingsInput, Suited } from './findings-input.js';
import { SUIT } from './suit-figures.js';
import type { HideFit, SuitHide, SuitPiece } from './suit-model.js';
import { warning } from './suit-warning.js';
import { temperOf } from './wanted-leather.js';

/** On single pieces: no hide fits, or it comes out too thin or too thick for what is done to it. */
export function pieceFindings({ order, workshop }: FindingsInput, { hides, pieces }: Suited): Diagnostic[] {
  return pieces.flatMap((piece) => {
    const own = hides.filter(({ leathers }) => leathers.includes(piece.leather)).map(({ id }) => id);
    return [...withoutHide(piece, own), ...thicknessFindings(piece, own, { order, workshop, hides })];
  });
}

/** So many hides are named with the reason why they do not fit. */
const REASONS_TOLD = 2;

function withoutHide(piece: SuitPiece, own: readonly string[]): Diagnostic[] {
  const { leather } = piece;
  const isOwn = (fit: HideFit): boolean => own.includes(fit.hide);
  const good = piece.fits.filter(({ kind }) => kind !== 'no');
  if (good.some(isOwn)) return [];
  const told = own.length > 0 ? piece.fits.filter(isOwn) : piece.fits;
  const first = told.slice(0, REASONS_TOLD);
  const params = {
    piece: piece.piece,
    article: piece.article,
    leather,
    why: first.map((fit) => `${fit.hide} ${reasonWords(fit)}`).join('; '),
    reasons: reasonsText(first.map(({ hide, reasons: [remark] }) => ({ hide, ...(remark && { remark }) }))),
  };
  if (good.length === 0) return [{ code: 'suit-no-hide', severity: 'error', params }];
  // No hide is listed yet: to find one is what was asked for.
  if (own.length === 0) return [];
  return [warning('suit-other-hide', { ...params, hides: listWords(good.map(({ hide }) => hide)) })];
}

function reasonWords({ reasons }: HideFit): string {
  const [first] = reasons;
  if (first === undefined) return 'does not';
  const words = suitRemarkWords(first);
  return /^(will|does|has|was|stretches)\b/.test(words) ? words : `is ${words}`;
}

interface Known {
  readonly order: ResolvedOrder;
  readonly workshop: Workshop;
  readonly hides: readonly SuitHide[];
}

function thicknessFindings(piece: SuitPiece, own: readonly string[], known: Known): Diagnostic[] {
  const fits = piece.fits.filter((fit) => fit.kind !== 'no' && (own.length === 0 || own.includes(fit.hide)));
  const single = fits.filter(
    ({ finished, work }) => finished !== undefined && !work.some(({ kind }) => kind === 'layers'),
  );
  const thinnest = least(single);
  const thickest = fits.reduce((most, { finished }) => Math.max(most, finished?.maxMm ?? 0), 0);
  const limit = (name: string): number => figureOf(known.workshop, name).value.min;
  const who = { piece: piece.piece, article: piece.article };
  const findings: Diagnostic[] = [];
  const { needs } = piece.wanted;
  if (needs.includes('turned edges') && thickest > limit(SUIT.turnsSkived)) {
    const params = { ...who, thickness: thicknessWords(thickest, thickest) };
    findings.push(
      warning('suit-too-thick-to-turn', { ...params, most: trimmed(limit(SUIT.turnsSkived), 2) }),
    );
  }
  if (thinnest?.finished === undefined) return findings;
  const { minMm, maxMm } = thinnest.finished;
  const thin = { ...who, thickness: thicknessWords(minMm, maxMm) };
  if (needs.includes('burnished edges') && minMm < limit(SUIT.edge)) {
    findings.push(warning('suit-edge-thin', { ...thin, least: trimmed(limit(SUIT.edge), 2) }));
  }
  if (resolvedOf(piece, known).bearsLoad && minMm < limit(SUIT.weak)) {
    findings.push(warning('suit-thin-for-load', { ...thin, least: trimmed(limit(SUIT.weak), 2) }));
  }
  if (minMm < limit(SUIT.warps) && isWetted(piece, known) && isFirm(thinnest, known)) {
    findings.push(warning('suit-thin-warps', thin));
  }
  return findings;
}

function least(fits: readonly HideFit[]): HideFit | undefined {
  return fits.reduce<HideFit | undefined>(
    (best, fit) => (best === undefined || fit.finished!.minMm < best.finished!.minMm ? fit : best),
    undefined,
  );
}

function resolvedOf(piece: SuitPiece, { order }: Known): ResolvedPiece {
  const article = order.articles.find(({ name }) => name === piece.article)!;
  return article.pieces.find(({ name }) => name === piece.piece)!;
}

function isWetted(piece: SuitPiece, { order }: Known): boolean {
  const preparation = order.leathers.find(({ name }) => name === piece.leather)?.preparation;
  const { needs } = piece.wanted;
  return preparation?.dye !== undefined || needs.includes('tooling') || needs.includes('moulding');
}

function isFirm({ hide }: HideFit, { hides }: Known): boolean {
  const temper = hides.find(({ id }) => id === hide)?.temper;
  const found = temper === undefined ? undefined : temperOf(temper);
  return found === 'firm' || found === 'hard';
}
