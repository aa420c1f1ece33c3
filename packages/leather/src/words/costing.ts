import { capital } from './sentence.js';
import type { SentenceTable } from './sentence.js';

/** English sentences of money and prices. */
export const COSTING_SENTENCES = {
  'mixed-currencies': (p: { first: string; currency: string; second: string; other: string }) =>
    `Sums of two currencies can't be added: ${p.first} is in ${p.currency}, ${p.second} is in ${p.other}; write all prices in one currency.`,
  'rounding-to-nothing': () =>
    `Prices can't be rounded to multiples of 0; write an amount above 0 under "rounding", such as "0.50 EUR", or leave it out.`,
  'unknown-price-unit': (p: { found: string; known: string }) =>
    `A price per ${p.found} can't be reckoned with; write "per" as one of ${p.known}.`,
  'price-without-area': (p: { hide: string; price: string; per: string }) =>
    `Hide ${p.hide} costs ${p.price} per ${p.per} of the invoiced area, but has no invoiced area; write "invoicedMm2" into its file, or make the price one per hide or of the measured area.`,
  'yield-of-zero': (p: { what: string }) =>
    `${capital(p.what)} is 0, so that nothing can be reckoned with it; write a share above 0.`,
  'nothing-priced': () =>
    `Nothing here has a price; write prices into the hide files, or "offers", "prices" and "hourlyRate" into the workshop file.`,
  'sets-not-known': (p: { article: string }) =>
    `Nothing can be reckoned for ${p.article} before it is laid, as it is made in as many sets as fit; give "sets" a number, or reckon the layout.`,
  'no-price-leather': (p: { name: string }) =>
    `The leather of ${p.name} has no price, so that the sums are without it; write a price into the hide file, or an offer that suits into the workshop file.`,
  'no-price-thread': (p: { name: string }) =>
    `The thread "${p.name}" has no price, so that the sums are without it; write a length with a price into the order, or a price per m into the workshop file.`,
  'no-price-hardware': (p: { name: string }) =>
    `The hardware "${p.name}" has no price, so that the sums are without it; write one into the order, or a price each into the workshop file.`,
  'no-price-liquid': (p: { name: string }) =>
    `The liquid "${p.name}" has no price, so that the sums are without it; write a price per L into the workshop file.`,
  'no-price-work': () =>
    `An hour of work has no price, so that the sums are without work; write "hourlyRate" into the workshop file.`,
  'no-hours': (p: { article: string }) =>
    `Nobody says how many hours of work "${p.article}" takes, so that its price is without work; write "hours" into the article.`,
  'card-leathers-differ': (p: { leather: string; article: string; what: string }) =>
    `${capital(p.article)} asks for another ${p.what} of the leather ${p.leather} than an article before it; order them apart, or give the leathers names of their own.`,
  'article-not-in-layout': (p: { article: string }) =>
    `The layout holds no pieces of ${p.article}, so that it has no yield of it; give a layout in which it was laid.`,
  'article-not-all-laid': (p: { article: string; count: number }) =>
    `${p.count === 1 ? 'One piece' : `${p.count} pieces`} of ${p.article} could not be laid, so that the layout tells no yield of it; lay it whole first.`,
  'yield-not-cut-yet': (p: { article: string; planned: number; all: number }) =>
    `Of the pieces of "${p.article}", ${p.planned} of ${p.all} are not ticked as cut yet, so that this is the yield as it was laid.`,
  'cost-not-all-laid': (p: { article: string; count: number }) =>
    `${p.count === 1 ? 'One piece' : `${p.count} pieces`} of "${p.article}" could not be laid, so that the price is without ${p.count === 1 ? 'its' : 'their'} leather.`,
} as const satisfies SentenceTable;
