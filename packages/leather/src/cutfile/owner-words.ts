import type { PieceCopy } from '../model/layout.js';
import type { CutOwner } from './types.js';

/** Who a line belongs to, in words within a sentence. */
export function ownerWords(of: CutOwner): string {
  switch (of.kind) {
    case 'piece':
      return copyWords(of.copy);
    case 'lane':
      return `lane ${of.id}`;
    case 'rough cut':
      return `rough cut "${of.id}"`;
    case 'swatch':
      return `swatch ${of.id}`;
    case 'hide':
      return `hide ${of.id}`;
  }
}

/** A copy in words: "front" of saddlebag, set 2. */
export function copyWords({ article, piece, set, copy, mirrored }: PieceCopy): string {
  const which = [`set ${set}`, ...(copy > 1 ? [`copy ${copy}`] : []), ...(mirrored ? ['mirrored'] : [])];
  return `"${piece}" of ${article} (${which.join(', ')})`;
}
