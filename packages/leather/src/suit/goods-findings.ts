import { goodsRowOf, tannageRowOf } from '../goods/find-goods.js';
import type { Diagnostic } from '../model/diagnostic.js';
import type { Workshop } from '../model/workshop.js';
import { figureOf } from '../workshop/figures.js';
import { nearestWord } from '../words/nearest.js';
import { listWords } from '../words/sentence.js';
import { thicknessWords } from '../words/suit.js';
import type { FindingsInput, Suited } from './findings-input.js';
import { SUIT } from './suit-figures.js';
import type { SuitPiece } from './suit-model.js';
import { warning } from './suit-warning.js';

/** On goods and tannages that no table knows, and on wishes far from what is usual. */
export function goodsFindings(input: FindingsInput, { pieces }: Suited): Diagnostic[] {
  return [
    ...unknownGoods(input),
    ...farFromGoods(pieces, input.workshop),
    ...unknownTannages(input),
    ...besideSteel(pieces),
    ...strapsFromBelly(input),
  ];
}

function unknownGoods({ written, workshop }: FindingsInput): Diagnostic[] {
  const names = workshop.goods.flatMap((row) => [row.goods, ...row.alsoCalled]);
  return written.articles
    .filter(({ goods, wants }) => wants === undefined && goodsRowOf(goods, workshop) === undefined)
    .map(({ goods, name }) =>
      warning('suit-goods-not-known', { goods, article: name, near: nearestWord(goods, names) }),
    );
}

function farFromGoods(pieces: readonly SuitPiece[], workshop: Workshop): Diagnostic[] {
  const toleranceMm = figureOf(workshop, SUIT.tolerance).value.max;
  const groups = new Map<string, { who: SuitPiece[]; params: Record<string, string> }>();
  for (const piece of pieces) {
    const { thickness, partRow, goodsRow } = piece.wanted;
    const row = partRow ?? goodsRow;
    if (thickness === undefined || row?.thickness === undefined) continue;
    if (!['piece', 'wants', 'leather'].includes(thickness.from)) continue;
    const { minMm, maxMm } = thickness.value;
    const usual = {
      minMm: row.thickness.minMm / piece.layers,
      maxMm: row.thickness.maxMm / piece.layers,
    };
    if (minMm <= usual.maxMm + toleranceMm && maxMm >= usual.minMm - toleranceMm) continue;
    const params = {
      asked: thicknessWords(minMm, maxMm),
      row: row.goods,
      usual: thicknessWords(usual.minMm, usual.maxMm),
    };
    const key = JSON.stringify([piece.article, params]);
    const group = groups.get(key) ?? { who: [], params };
    groups.set(key, { ...group, who: [...group.who, piece] });
  }
  return [...groups.values()].map(({ who, params }) => {
    const names = listWords(
      who.map(({ piece }) => `"${piece}"`),
      'and',
    );
    return warning('suit-far-from-goods', { ...params, who: `${names} of ${who[0]!.article}` });
  });
}

function unknownTannages({ written, hides, workshop }: FindingsInput): Diagnostic[] {
  const said = new Map<string, string>();
  const say = (tannage: string | undefined, whose: string): void => {
    if (tannage === undefined || tannageRowOf(tannage, workshop) !== undefined) return;
    if (!said.has(tannage)) said.set(tannage, whose);
  };
  for (const { hide } of hides) say(hide.leather.tannage, `hide ${hide.id}`);
  for (const { tannage, name } of written.leathers) say(tannage, `leather "${name}"`);
  for (const { wants, name } of written.articles) {
    for (const tannage of wants?.tannages ?? []) say(tannage, `article ${name}`);
  }
  const names = workshop.tannages.flatMap((row) => [row.tannage, ...row.alsoCalled]);
  return [...said].map(([tannage, whose]) =>
    warning('suit-tannage-not-in-table', { tannage, whose, near: nearestWord(tannage, names) }),
  );
}

function besideSteel(pieces: readonly SuitPiece[]): Diagnostic[] {
  const articles = pieces
    .filter(({ wanted }) => wanted.needs.includes('lying against steel'))
    .map(({ article }) => article);
  if (articles.length === 0) return [];
  return [warning('suit-beside-steel', { articles: listWords([...new Set(articles)], 'and') })];
}

const STRETCHING: readonly string[] = ['belly', 'flank'];

function strapsFromBelly({ order }: FindingsInput): Diagnostic[] {
  return order.articles.flatMap((article) =>
    article.pieces.flatMap((piece) => {
      const zones = (piece.zones ?? []).filter((zone) => STRETCHING.includes(zone));
      const isPulled = piece.part === 'strap' || piece.bearsLoad;
      if (!isPulled || zones.length === 0) return [];
      const params = { piece: piece.name, article: article.name, zones: listWords(zones) };
      return [warning('suit-strap-from-belly', params)];
    }),
  );
}
