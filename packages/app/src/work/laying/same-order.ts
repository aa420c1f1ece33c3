import { hashHide, writeLayout } from '@hidebound/leather';
import type { Layout, NamedHide } from '@hidebound/leather';
import type { OrderRead } from '../desk-tasks.js';

/** Whether a layout is of the order as it is now, piece by piece and word by word. */
export function isOfOrder(layout: Layout, { order, pieces }: Pick<OrderRead, 'order' | 'pieces'>): boolean {
  return writeLayout({ ...layout, order, pieces }) === writeLayout(layout);
}

/** Ids of the layout's hides that have changed since, or are no longer there. */
export function changedHides(layout: Layout, hides: readonly NamedHide[]): string[] {
  return layout.hides.flatMap(({ id, hash, file }) => {
    const named = hides.find(({ hide }) => hide.id === id);
    if (named === undefined) return [file];
    return hashHide(named.hide) === hash ? [] : [named.hide.id];
  });
}
