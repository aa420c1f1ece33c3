import { listWords, suitRemarkWords, thicknessWords } from '@hidebound/leather';
import type { HideFit, Suit, SuitHide, SuitPiece, SuitWork, WantOrigin } from '@hidebound/leather';

/** Names of pieces: with their article only where two articles have one of that name. */
export function pieceNamer({ pieces }: Pick<Suit, 'pieces'>): (piece: SuitPiece) => string {
  const isShared = (name: string): boolean => pieces.filter(({ piece }) => piece === name).length > 1;
  return ({ piece, article }) => (isShared(piece) ? `${piece} of ${article}` : piece);
}

/** "a, b and c". */
export function wordList(words: readonly string[]): string {
  return listWords(words, 'and');
}

/** The short word of a table's cell: "fits", "skive to 1–1.8 mm", "no: too thin". */
export function cellWords(fit: HideFit): string {
  switch (fit.kind) {
    case 'fits':
      return hasPlaces(fit) ? 'fits at places' : 'fits';
    case 'skive': {
      const all = fit.work.find((work) => work.kind === 'all over');
      return all === undefined ? 'skive' : `skive to ${thicknessWords(all.to.minMm, all.to.maxMm)}`;
    }
    case 'double': {
      const layers = fit.work.find((work) => work.kind === 'layers');
      return layers?.count === 2 || layers === undefined ? 'double' : `${layers.count} layers`;
    }
    case 'measure':
      return fit.remarks.some(({ code }) => code === 'thickness-not-known') ? 'measure first' : 'ask first';
    case 'no':
      return `no: ${shortReason(fit)}`;
  }
}

function hasPlaces({ remarks }: HideFit): boolean {
  return remarks.some(({ code }) => code === 'only-places');
}

/** The first reason without its figures, which have a table of their own. */
export function shortReason({ reasons }: HideFit): string {
  const [first] = reasons;
  return first === undefined ? '' : suitRemarkWords(first).replace(/ ?\(.*$|:.*$|,.*$/, '');
}

/** A step at the bench, as an order to oneself; the same step on several hides is told once, with all of its figures. */
export function workWords(steps: readonly SuitWork[]): string {
  const [work] = steps;
  if (work === undefined) return '';
  switch (work.kind) {
    case 'all over': {
      const by = tenthsOf(steps.map((step) => (step.kind === 'all over' ? step.byMm : 0)));
      return `skive all over to ${thicknessWords(work.to.minMm, work.to.maxMm)} (${by} mm off at most)`;
    }
    case 'turned edges':
      return `skive the edges that are turned ${tenths(work.widthMm)} mm wide to ${tenths(work.toMm)} mm`;
    case 'drawn lines':
      return `skive along the ${work.count === 1 ? 'line' : `${work.count} lines`} that the pattern shows, to ${tenths(work.toMm)} mm`;
    case 'folds':
      return `damp before folding; where ${work.count === 1 ? 'the fold is' : 'folds are'} to lie flat, thin to about ${thinnedTo(steps)} mm`;
    case 'buckle fold':
      return `thin the fold at the buckle to about ${thinnedTo(steps)} mm, running out over ${work.taper[0]}–${work.taper[1]} mm`;
    case 'covered bottoms':
      return `where they lie on each other, skive the covered bottoms to ${thicknessWords(work.to.minMm, work.to.maxMm)}, and set them off so that steps never lie over each other`;
    case 'layers':
      return `glue ${work.count} layers flesh to flesh`;
  }
}

function thinnedTo(steps: readonly SuitWork[]): string {
  return tenthsOf(steps.flatMap((step) => ('toMm' in step ? [step.toMm] : [])));
}

function tenthsOf(figures: readonly number[]): string {
  const [from, to] = [tenths(Math.min(...figures)), tenths(Math.max(...figures))];
  return from === to ? from : `${from}–${to}`;
}

/** Tenths of a millimetre, without needless decimals. */
export function tenths(mm: number): string {
  return mm.toFixed(1).replace(/\.0$/, '');
}

const ORIGIN_WORDS: Readonly<Record<WantOrigin, string>> = {
  piece: 'the piece',
  wants: 'the article',
  leather: 'the leather',
  'part row': 'the table, for this part',
  'goods row': 'the table, for these goods',
  'part rule': 'the rule of the part',
};

export function originWords(from: WantOrigin): string {
  return ORIGIN_WORDS[from];
}

/** One line on a hide: what of a leather's pieces it fits, and what is done to them. */
export function hideLines(suit: Suit, hide: SuitHide): string[] {
  const all = [...new Set(suit.pieces.map(({ leather }) => leather))];
  const leathers = hide.leathers.length > 0 ? hide.leathers.filter((name) => all.includes(name)) : all;
  return leathers.flatMap((leather) => hideLine(suit, hide, leather));
}

interface Paired {
  readonly piece: SuitPiece;
  readonly fit: HideFit;
}

function hideLine(suit: Suit, hide: SuitHide, leather: string): string[] {
  const nameOf = pieceNamer(suit);
  const pairs = suit.pieces
    .filter((piece) => piece.leather === leather)
    .map((piece): Paired => ({ piece, fit: piece.fits.find((fit) => fit.hide === hide.id)! }));
  const good = pairs.filter(({ fit }) => fit.kind !== 'no');
  const bad = pairs.filter(({ fit }) => fit.kind === 'no');
  if (good.length === 0 && hide.leathers.length === 0) return [];
  const total = copiesOf(pairs);
  if (good.length === 0) {
    const why = [...new Set(bad.map(({ fit }) => shortReason(fit)))];
    return [`${hide.id} fits none of the ${total} pieces of ${leather}: ${wordList(why)}.`];
  }
  const count =
    bad.length > 0 ? `${copiesOf(good)} of ${total}` : total === 1 ? 'the 1 piece' : `all ${total} pieces`;
  const told = [
    `${hide.id} fits ${bad.length > 0 ? `${count} pieces` : count} of ${leather}`,
    ...skivedWords(good, nameOf),
    ...kindWords(good, 'double', 'in two layers', nameOf),
    ...kindWords(good, 'measure', 'only if what is not known of it is right', nameOf),
    ...refusedWords(bad, nameOf),
  ];
  return [`${told.join('; ')}.`];
}

function copiesOf(pairs: readonly Paired[]): number {
  return pairs.reduce((sum, { piece }) => sum + piece.copies, 0);
}

type NameOf = (piece: SuitPiece) => string;

/** "gusset skived to 1.2–2.4 mm all over": pieces that come out the same are told together. */
function skivedWords(pairs: readonly Paired[], nameOf: NameOf): string[] {
  const groups = new Map<string, string[]>();
  for (const { piece, fit } of pairs) {
    const all = fit.work.find((work) => work.kind === 'all over');
    if (fit.kind !== 'skive' || all === undefined) continue;
    const to = thicknessWords(all.to.minMm, all.to.maxMm);
    groups.set(to, [...(groups.get(to) ?? []), nameOf(piece)]);
  }
  return [...groups].map(([to, names]) => `${wordList(names)} skived to ${to} all over`);
}

function kindWords(pairs: readonly Paired[], kind: HideFit['kind'], words: string, nameOf: NameOf): string[] {
  const names = pairs.filter(({ fit }) => fit.kind === kind).map(({ piece }) => nameOf(piece));
  return names.length === 0 ? [] : [`${wordList(names)} ${words}`];
}

function refusedWords(pairs: readonly Paired[], nameOf: NameOf): string[] {
  const groups = new Map<string, string[]>();
  for (const { piece, fit } of pairs) {
    const why = shortReason(fit);
    groups.set(why, [...(groups.get(why) ?? []), nameOf(piece)]);
  }
  return [...groups].map(([why, names]) => `not ${wordList(names)} (${why})`);
}
