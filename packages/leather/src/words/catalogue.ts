import type { Diagnostic, DiagnosticPlace } from '../model/diagnostic.js';
import { COSTING_SENTENCES } from './costing.js';
import { BUYING_SENTENCES } from './buying.js';
import { CUT_FILE_SENTENCES } from './cutfile.js';
import { FILE_SENTENCES } from './files.js';
import { LAYOUT_SENTENCES } from './leather.js';
import { ORDER_SENTENCES } from './order.js';
import { PHOTO_HINTS_SENTENCES } from './photo-hints.js';
import { PREPARING_SENTENCES } from './preparing.js';
import { REFERENCE_SENTENCES } from './reference.js';
import type { SentenceLanguage } from './language.js';
import type { SentenceParams, SentenceTable } from './sentence.js';
import { STAGES_SENTENCES } from './stages.js';
import { TEMPLATE_SENTENCES } from './template.js';
import { STITCH_SENTENCES } from './stitch.js';
import { STOCK_SENTENCES } from './stock.js';
import { SUIT_SENTENCES } from './suit.js';

/** Every sentence of this package, by code. */
export const SENTENCES = {
  ...FILE_SENTENCES,
  ...LAYOUT_SENTENCES,
  ...ORDER_SENTENCES,
  ...CUT_FILE_SENTENCES,
  ...BUYING_SENTENCES,
  ...STITCH_SENTENCES,
  ...TEMPLATE_SENTENCES,
  ...PHOTO_HINTS_SENTENCES,
  ...REFERENCE_SENTENCES,
  ...STAGES_SENTENCES,
  ...STOCK_SENTENCES,
  ...SUIT_SENTENCES,
  ...PREPARING_SENTENCES,
  ...COSTING_SENTENCES,
} as const satisfies SentenceTable;

/** A code that has a sentence in this package's catalogue. */
export type SentenceCode = keyof typeof SENTENCES;

/** What the packages' own words are in. */
const ENGLISH: Omit<SentenceLanguage, 'suitRemark'> = { sentences: {}, place: placeWords };

/**
 * The one sentence for a finding: its place (file, line, element), then what is wrong and what would be right.
 * Other packages hand in their own tables; these are looked up first. A code that no table knows is shown as it is,
 * with its parameters, so that nothing is hidden. In another language its own sentences go first; a code without one
 * is told in English.
 */
export function sentenceFor(
  { code, params, place }: Pick<Diagnostic, 'code' | 'params' | 'place'>,
  extraTables: readonly SentenceTable[] = [],
  language: Pick<SentenceLanguage, 'sentences' | 'place'> = ENGLISH,
): string {
  const words = bareSentence(code, params, [language.sentences, ...extraTables]);
  const where = place === undefined ? '' : language.place(place);
  return where === '' ? words : `${where}: ${words}`;
}

function bareSentence(code: string, params: SentenceParams, extraTables: readonly SentenceTable[]): string {
  for (const table of [...extraTables, SENTENCES as SentenceTable]) {
    if (!Object.hasOwn(table, code)) continue;
    const write = table[code] as ((params: SentenceParams) => string) | undefined;
    if (write !== undefined) return write(params);
  }
  const details = Object.entries(params).map(([name, value]) => `${name} ${value}`);
  return details.length === 0 ? `${code}.` : `${code} (${details.join(', ')}).`;
}

/** "order.yaml, line 12, articles[0].pieces[2].count, at (120, 80.5) mm". */
export function placeWords(place: DiagnosticPlace | undefined): string {
  if (place === undefined) return '';
  const words: string[] = [];
  if (place.file !== undefined) words.push(place.file);
  if (place.line !== undefined) words.push(`line ${place.line}`);
  if (place.at !== undefined && place.at !== '') words.push(place.at);
  if (place.point !== undefined)
    words.push(`at (${shortNumber(place.point.x)}, ${shortNumber(place.point.y)}) mm`);
  return words.join(', ');
}

function shortNumber(value: number): string {
  return String(Math.round(value * 10) / 10);
}
