import { isMap, isScalar, parseDocument } from 'yaml';
import type { Pair } from 'yaml';
import { leatherShares } from '../costing/leather-lines.js';
import { parseArticle } from '../files/article-file.js';
import type { Layout } from '../model/layout.js';
import { leatherError } from '../words/refuse.js';
import { quoteValue } from '../words/sentence.js';

/**
 * The real yield of one article in a layout: area of its pieces over the leather used up for them, waste shared by area
 * with what else lies on its hides. Spoiled copies count as waste.
 * @throws LeatherError `article-not-in-layout`; `article-not-all-laid` where some of it could not be laid
 */
export function yieldOfArticle(layout: Layout, article: string): number {
  const unplaced = layout.unplaced.filter((copy) => copy.article === article).length;
  if (unplaced > 0)
    throw leatherError('article-not-all-laid', { article: quoteValue(article), count: unplaced });
  const hides = layout.yield.hides.map((areas) => ({ hide: areas.hide, areas }));
  const own = leatherShares(layout, hides).filter((share) => share.article === article);
  const sum = (of: (share: (typeof own)[number]) => number): number =>
    own.reduce((total, each) => total + of(each), 0);
  const usedUpMm2 = sum((share) => share.usedUpMm2);
  if (usedUpMm2 <= 0) throw leatherError('article-not-in-layout', { article: quoteValue(article) });
  return sum((share) => share.piecesMm2) / usedUpMm2;
}

/** Decimals of a yield that is written: a thousandth is a tenth of a per cent. */
const YIELD_DECIMALS = 3;

/**
 * The text of an article file with another last yield: that value is changed, or its line added at the end, and every
 * other byte stays, comments too.
 * @throws LeatherError as `parseArticle`, for a file that is not sound
 */
export function withLastYield(text: string, yieldShare: number, options: { readonly file: string }): string {
  parseArticle(text, options);
  const value = String(Number(yieldShare.toFixed(YIELD_DECIMALS)));
  const { contents } = parseDocument(text);
  const pairs: readonly Pair[] = isMap(contents) ? contents.items : [];
  const old = pairs.find(({ key }) => isScalar(key) && key.value === 'lastYield')?.value;
  const range = isScalar(old) ? old.range : undefined;
  if (range) return text.slice(0, range[0]) + value + text.slice(range[1]);
  const isOneGroup = isMap(contents) && contents.flow === true;
  if (!isOneGroup) return `${text}${text.endsWith('\n') ? '' : '\n'}lastYield: ${value}\n`;
  const end = text.lastIndexOf('}');
  return `${text.slice(0, end).trimEnd()},\n  "lastYield": ${value}\n${text.slice(end)}`;
}
