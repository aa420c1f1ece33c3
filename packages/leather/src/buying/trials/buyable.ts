import type { Diagnostic } from '../../model/diagnostic.js';
import type { ThicknessRange } from '../../model/marks.js';
import type { ResolvedPiece } from '../../model/order.js';
import type { CutSizeRule, Offer, Span } from '../../model/workshop-rules.js';
import type { Workshop } from '../../model/workshop.js';
import { leatherError } from '../../words/refuse.js';
import type { Purchase } from './purchase.js';

/** A kind of hide that can be bought: an offer of the workshop file, or a usual cut without a price. */
export interface Buyable {
  readonly name: string;
  readonly rule: CutSizeRule;
  /** Area of one hide, mm². */
  readonly areaMm2: Span;
  /** Share free of flaws, 0 to 1; absent: nobody says. */
  readonly usableShare?: Span;
  readonly offer?: Offer;
}

export interface BuyablesFound {
  readonly buyables: readonly Buyable[];
  readonly diagnostics: readonly Diagnostic[];
}

/** Cuts that small workshops buy, for where no offer is known: common practice, no source. */
const USUAL_CUTS: readonly string[] = ['side', 'double shoulder', 'bend'];

/**
 * What suits a purchase: offers of its tannage and colour, where both say one, whose thickness meets the one that is
 * asked for. Where none does, the usual cuts stand in, without prices, and a warning says so.
 * @throws LeatherError `offer-of-unknown-cut`, `offer-of-unknown-grade`
 */
export function buyablesFor(purchase: Purchase, workshop: Workshop): BuyablesFound {
  const all = workshop.offers.map((offer) => buyableOf(offer, workshop));
  const suitable = all.filter(({ offer }) => suits(offer!, purchase, workshop));
  if (suitable.length > 0) {
    return { buyables: suitable, diagnostics: suitable.flatMap((own) => thicknessNotes(own, purchase)) };
  }
  const usual = workshop.cuts.filter(({ name }) => USUAL_CUTS.includes(name));
  const buyables = usual.map((rule): Buyable => ({ name: rule.name, rule, areaMm2: rule.areaMm2 }));
  const leather = namesOf(purchase);
  const code = workshop.offers.length === 0 ? 'no-offers' : 'no-offer-suits';
  return { buyables, diagnostics: [{ code, severity: 'warning', params: { leather } }] };
}

/** "body and wraps". */
export function namesOf({ leathers }: Pick<Purchase, 'leathers'>): string {
  return leathers.length < 2
    ? leathers.join('')
    : `${leathers.slice(0, -1).join(', ')} and ${leathers[leathers.length - 1]!}`;
}

function buyableOf(offer: Offer, { cuts, grades }: Workshop): Buyable {
  const rule = cuts.find(({ name }) => name === offer.cut);
  if (rule === undefined) throw leatherError('offer-of-unknown-cut', { offer: offer.name, cut: offer.cut });
  const grade = grades.find((row) => row.grade === offer.grade);
  if (offer.grade !== undefined && grade === undefined) {
    throw leatherError('offer-of-unknown-grade', { offer: offer.name, grade: offer.grade });
  }
  return {
    name: offer.name,
    rule,
    areaMm2: offer.areaMm2 ?? rule.areaMm2,
    ...(grade === undefined ? {} : { usableShare: grade.usableShare }),
    offer,
  };
}

function suits(offer: Offer, { wants }: Purchase, { tannages }: Workshop): boolean {
  const tannageOf = (name: string): string =>
    tannages.find((row) => [row.tannage, ...row.alsoCalled].some((known) => isSame(known, name)))?.tannage ??
    name;
  const isTannage =
    offer.tannage === undefined ||
    wants.tannage === undefined ||
    isSame(tannageOf(offer.tannage), tannageOf(wants.tannage));
  const isColour =
    offer.colour === undefined || wants.colour === undefined || isSame(offer.colour, wants.colour);
  return isTannage && isColour && overlap(offer.thickness, wants.thickness);
}

function isSame(a: string, b: string): boolean {
  return a.trim().toLowerCase() === b.trim().toLowerCase();
}

function overlap(a: ThicknessRange | undefined, b: ThicknessRange | undefined): boolean {
  return a === undefined || b === undefined || (a.minMm <= b.maxMm && b.minMm <= a.maxMm);
}

/** Trial hides have no thickness of their own: what of an offer may be too thick or too thin is told instead. */
function thicknessNotes({ name, offer }: Buyable, purchase: Purchase): Diagnostic[] {
  const leather = namesOf(purchase);
  const pieces = purchase.order.articles.flatMap((article) => article.pieces);
  if (offer?.thickness === undefined) {
    const isAsked = pieces.some(({ thickness }) => thickness !== undefined);
    const params = { offer: name, leather };
    return isAsked ? [{ code: 'offer-thickness-not-known', severity: 'warning', params }] : [];
  }
  const { thickness } = offer;
  const odd = [...new Set(pieces.filter((piece) => isAtRisk(piece, thickness)).map((piece) => piece.name))];
  if (odd.length === 0) return [];
  const params = { offer: name, pieces: odd.join(', '), leather, count: odd.length };
  return [{ code: 'offer-thickness-at-risk', severity: 'warning', params }];
}

function isAtRisk({ thickness, tooThick }: ResolvedPiece, offered: ThicknessRange): boolean {
  if (thickness === undefined) return false;
  const isTooThick = tooThick === 'refuse' && offered.maxMm > thickness.maxMm;
  return isTooThick || offered.minMm < thickness.minMm;
}
