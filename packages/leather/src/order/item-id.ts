import type { CopyRef } from '@hidebound/geometry';
import type { PieceCopy } from '../model/layout.js';

const MIRRORED = '~mirrored';

/** Which piece of which article an item stands for; a spoiled copy or a swatch is an item of its own. */
export type ItemMeaning =
  | { readonly kind: 'piece'; readonly article: string; readonly piece: string; readonly mirrored: boolean }
  | { readonly kind: 'spoiled'; readonly copy: PieceCopy }
  | { readonly kind: 'swatch'; readonly id: string };

/** `article/piece` or `article/piece~mirrored`; a stroke or tilde within a name is doubled, so that ids are unique. */
export function itemId(article: string, piece: string, mirrored: boolean): string {
  return `${escaped(article)}/${escaped(piece)}${mirrored ? MIRRORED : ''}`;
}

/** The copy as nesting names it. */
export function copyRefOf(copy: PieceCopy): CopyRef {
  return { item: itemId(copy.article, copy.piece, copy.mirrored), set: copy.set, copy: copy.copy };
}

/** The copy as a layout names it; none for what stands for no piece. */
export function pieceCopyOf(ref: CopyRef, items: ReadonlyMap<string, ItemMeaning>): PieceCopy | undefined {
  const meaning = items.get(ref.item);
  if (meaning === undefined || meaning.kind === 'swatch') return undefined;
  if (meaning.kind === 'spoiled') return meaning.copy;
  const { article, piece, mirrored } = meaning;
  return { article, piece, set: ref.set, copy: ref.copy, mirrored };
}

/** One word for a copy, for maps. */
export function pieceCopyKey(copy: PieceCopy): string {
  return `${itemId(copy.article, copy.piece, copy.mirrored)} ${copy.set} ${copy.copy}`;
}

/** The copy alone, without the rest of its placement. */
export function bareCopy(copy: PieceCopy): PieceCopy {
  const { article, piece, set, copy: number, mirrored } = copy;
  return { article, piece, set, copy: number, mirrored };
}

function escaped(name: string): string {
  return name.replaceAll('/', '//').replaceAll('~', '~~');
}
