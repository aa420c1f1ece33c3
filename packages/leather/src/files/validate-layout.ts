import type { Layout, PieceCopy } from '../model/layout.js';
import { leatherError } from '../words/refuse.js';
import { quoteValue } from '../words/sentence.js';
import type { KeyPath } from './text/text-tree.js';
import type { WhereOf } from './validate-hide.js';

/**
 * Proves that a layout's names lead somewhere: hides, pieces, lanes and rough cuts that it speaks of are in it, and
 * no hide, piece, copy or id stands twice.
 * @throws LeatherError with the line of the name
 */
export function validateLayout(layout: Layout, where: WhereOf): void {
  const check = namesOf(layout, where);
  refuseRepeats(layout, where);
  layout.placements.forEach((copy, i) => {
    check.hide(copy.hide, ['placements', i]);
    check.piece(copy, ['placements', i]);
  });
  layout.unplaced.forEach((copy, i) => check.piece(copy, ['unplaced', i]));
  layout.lanes.forEach((lane, i) => {
    check.hide(lane.hide, ['lanes', i]);
    lane.rows.forEach((row, j) =>
      row.straps.forEach((copy, k) => check.piece(copy, ['lanes', i, 'rows', j, 'straps', k])),
    );
  });
  layout.roughCuts.forEach((block, i) => {
    check.hide(block.hide, ['roughCuts', i]);
    block.members.forEach((copy, k) => check.piece(copy, ['roughCuts', i, 'members', k]));
  });
  layout.swatches.forEach((swatch, i) => {
    check.hide(swatch.hide, ['swatches', i]);
    if (swatch.roughCut !== undefined) check.block(swatch.roughCut, ['swatches', i, 'roughCut']);
  });
  layout.cuttingOrder.forEach((step, i) => {
    check.hide(step.hide, ['cuttingOrder', i]);
    if (step.of !== undefined) check.block(step.of, ['cuttingOrder', i, 'of']);
    step.pieces.forEach((copy, k) => check.piece(copy, ['cuttingOrder', i, 'pieces', k]));
  });
  layout.yield.hides.forEach((line, i) => check.hide(line.hide, ['yield', 'hides', i]));
}

function pieceKey(copy: Pick<PieceCopy, 'article' | 'piece'>): string {
  return JSON.stringify([copy.article, copy.piece]);
}

function namesOf(layout: Layout, where: WhereOf) {
  const hides = new Set(layout.hides.map(({ id }) => id));
  const pieces = new Set(layout.pieces.map(pieceKey));
  const blocks = new Set([...layout.lanes, ...layout.roughCuts].map(({ id }) => id));
  return {
    hide(id: string, path: KeyPath): void {
      if (hides.has(id)) return;
      throw leatherError('layout-no-such-hide', { hide: quoteValue(id) }, where([...path, 'hide']));
    },
    piece(copy: PieceCopy, path: KeyPath): void {
      if (pieces.has(pieceKey(copy))) return;
      const params = { piece: quoteValue(copy.piece), article: quoteValue(copy.article) };
      throw leatherError('layout-no-such-piece', params, where([...path, 'piece']));
    },
    block(id: string, path: KeyPath): void {
      if (blocks.has(id)) return;
      throw leatherError('layout-no-such-block', { id: quoteValue(id) }, where(path));
    },
  };
}

function refuseRepeats(layout: Layout, where: WhereOf): void {
  refuseRepeated(
    layout.hides,
    ({ id }) => id,
    ({ id }) => `Hide "${id}"`,
    (i) => where(['hides', i]),
  );
  refuseRepeated(
    layout.pieces,
    pieceKey,
    ({ piece, article }) => `Piece "${piece}" of article "${article}"`,
    (i) => where(['pieces', i]),
  );
  refuseRepeated(
    // A spoiled copy stays where it was cut, and another one is laid in its stead.
    layout.placements,
    (copy, i) =>
      `${pieceKey(copy)} ${copy.set} ${copy.copy} ${copy.mirrored} ${copy.state === 'spoiled' ? i : ''}`,
    (copy) =>
      `Copy ${copy.copy}${copy.mirrored ? ' (mirrored)' : ''} of piece "${copy.piece}" in set ${copy.set} of "${copy.article}"`,
    (i) => where(['placements', i]),
  );
  const blocks = [
    ...layout.lanes.map(({ id }, i) => ({ id, path: ['lanes', i] as KeyPath })),
    ...layout.roughCuts.map(({ id }, i) => ({ id, path: ['roughCuts', i] as KeyPath })),
  ];
  refuseRepeated(
    blocks,
    ({ id }) => id,
    ({ id }) => `The id "${id}"`,
    (i) => where(blocks[i]!.path),
  );
}

function refuseRepeated<Entry>(
  entries: readonly Entry[],
  keyOf: (entry: Entry, index: number) => string,
  wordsOf: (entry: Entry) => string,
  placeAt: (index: number) => ReturnType<WhereOf>,
): void {
  const seen = new Set<string>();
  entries.forEach((entry, i) => {
    const key = keyOf(entry, i);
    if (seen.has(key)) throw leatherError('layout-duplicate', { what: wordsOf(entry) }, placeAt(i));
    seen.add(key);
  });
}
