import { parseReferenceSheets, writeReferenceSheets } from '../reference/reference-sheets-file.js';
import { parseArticle, writeArticle } from './article-file.js';
import type { FormatKind } from './envelope.js';
import { parsePhotoHints, writePhotoHints } from './hints-file.js';
import { parseHide, writeHide } from './hide-file.js';
import { parseJobBundle, writeJobBundle } from './job-bundle-file.js';
import { parseLayout, writeLayout } from './layout-file.js';
import { parseOrder, writeOrder } from './order-file.js';
import { parseStockJournal, writeStockJournal } from './stock-journal-file.js';
import { parseWorkshop, writeWorkshop } from './workshop-file.js';

/** Reads a text and writes it again: the check that all formats share. For tests. */
export interface RoundTrip {
  readonly parse: (text: string, options: { readonly file: string }) => unknown;
  readonly rewrite: (text: string) => string;
}

function roundTrip<Value>(
  parse: (text: string, options: { readonly file: string }) => Value,
  write: (value: Value) => string,
): RoundTrip {
  return { parse, rewrite: (text) => write(parse(text, { file: 'again' })) };
}

export const ROUND_TRIPS: Readonly<Record<FormatKind, RoundTrip>> = {
  hide: roundTrip(parseHide, writeHide),
  article: roundTrip(parseArticle, writeArticle),
  order: roundTrip(parseOrder, writeOrder),
  layout: roundTrip(parseLayout, writeLayout),
  workshop: roundTrip(parseWorkshop, writeWorkshop),
  'stock-journal': roundTrip(parseStockJournal, writeStockJournal),
  job: roundTrip(parseJobBundle, writeJobBundle),
  'photo-hints': roundTrip(parsePhotoHints, writePhotoHints),
  'reference-sheets': roundTrip(parseReferenceSheets, writeReferenceSheets),
};
