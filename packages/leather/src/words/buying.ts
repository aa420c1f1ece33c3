import type { SentenceTable } from './sentence.js';

export interface OfferParams {
  readonly offer: string;
  readonly leather: string;
}

/** English sentences of buying. */
export const BUYING_SENTENCES = {
  'buy-needs-sets': (p: { article: string }) =>
    `The article "${p.article}" is to be made as often as fits, so nothing can be reckoned before there is a hide; give a number of sets.`,
  'nothing-to-buy': () =>
    'The order asks for no piece at all, so there is nothing to buy; give its articles sets and its pieces counts.',
  'lanes-in-open-sets': () =>
    'Straps that lie side by side can only be laid in a fixed number of sets; give the order a number of sets and let it place all.',
  'leather-without-pieces': (p: { leather: string }) =>
    `No piece is to be cut from the leather "${p.leather}", so none is bought.`,
  'offer-of-unknown-cut': (p: { offer: string; cut: string }) =>
    `The offer "${p.offer}" is of the cut "${p.cut}", which the table of cuts does not have; name one of its rows, or add one under "cuts".`,
  'offer-of-unknown-grade': (p: { offer: string; grade: string }) =>
    `The offer "${p.offer}" is of the grade "${p.grade}", which the table of grades does not have; name one of its rows, or add one under "grades".`,
  'no-offers': (p: { leather: string }) =>
    `The workshop file has no offers, so usual cuts stand in for ${p.leather}, without prices; list what you can buy under "offers".`,
  'no-offer-suits': (p: { leather: string }) =>
    `No offer of the workshop file suits ${p.leather} in tannage, colour and thickness, so usual cuts stand in, without prices; add an offer that does.`,
  'offer-thickness-not-known': (p: OfferParams) =>
    `The offer "${p.offer}" says nothing of its thickness, and pieces of ${p.leather} ask for one; measure before you buy.`,
  'offer-thickness-at-risk': (p: OfferParams & { pieces: string; count: number }) =>
    `The offer "${p.offer}" may be too thick or too thin in places for ${p.pieces}; measure before you buy, ask for a narrower span, or let ${p.count === 1 ? 'it' : 'them'} be skived.`,
  'piece-fits-no-offer': (p: { piece: string; article: string; leather: string; why: string; cut: string }) =>
    `"${p.piece}" of ${p.article} found no place on any hide that is offered for ${p.leather} (${p.why}); ${p.cut === '' ? 'no cut of the table holds it, so divide it' : `a ${p.cut} would hold it`}.`,
  'piece-misses-offer': (p: { piece: string; article: string; offer: string; trials: number; of: number }) =>
    `"${p.piece}" of ${p.article} found no place in ${p.trials} of ${p.of} trial layouts on "${p.offer}".`,
} as const satisfies SentenceTable;
