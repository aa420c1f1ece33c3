import type { Layout, PiecePlacement } from '../model/layout.js';
import { bareCopy, pieceCopyKey } from '../order/item-id.js';
import { copiesPerSet } from '../order/items.js';
import type { LayoutViolation } from './check-layout.js';

/**
 * Copies that lie the wrong way round: laid mirrored (or plain) beyond what the order asks for of that hand, where a
 * copy of the other hand is missing in the same set. The exact check can only tell that a copy is too many.
 */
export function findMirroredFaults(layout: Layout): LayoutViolation[] {
  const laid = layout.placements.filter(({ state }) => state !== 'spoiled');
  const known = new Set([...laid, ...layout.unplaced].map(pieceCopyKey));
  const seen = new Set<string>();
  return laid.flatMap((placement) => {
    const key = pieceCopyKey(placement);
    const isRepeated = seen.has(key);
    seen.add(key);
    const wanted = copiesWanted(layout, placement);
    if (wanted === undefined) return [];
    const isTooMany = isRepeated || placement.copy > wanted.own;
    if (!isTooMany || !isOtherHandMissing(placement, wanted.other, known)) return [];
    const { accepted } = placement;
    return [
      {
        rule: 'mirrored' as const,
        at: bareCopy(placement),
        hide: placement.hide,
        place: { x: placement.x, y: placement.y },
        accepted: accepted.includes('mirrored'),
      },
    ];
  });
}

function copiesWanted(
  layout: Layout,
  placement: PiecePlacement,
): { readonly own: number; readonly other: number } | undefined {
  const article = layout.order.articles.find(({ name }) => name === placement.article);
  const piece = article?.pieces.find(({ name }) => name === placement.piece);
  if (piece === undefined) return undefined;
  const { plain, mirrored } = copiesPerSet(piece);
  return placement.mirrored ? { own: mirrored, other: plain } : { own: plain, other: mirrored };
}

function isOtherHandMissing(placement: PiecePlacement, count: number, known: ReadonlySet<string>): boolean {
  for (let copy = 1; copy <= count; copy++) {
    if (!known.has(pieceCopyKey({ ...placement, copy, mirrored: !placement.mirrored }))) return true;
  }
  return false;
}
