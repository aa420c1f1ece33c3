import { hashHide } from '../hash/index.js';
import type { Diagnostic } from '../model/diagnostic.js';
import type { Layout } from '../model/layout.js';
import type { NamedHide } from '../order/sheets.js';

/** Hides that are not what they were when the layout was made: what is told of them may be wrong without a sign of it. */
export function changedHides(layout: Layout, named: readonly NamedHide[], file: string): Diagnostic[] {
  return layout.hides.flatMap((entry): Diagnostic[] => {
    const hide = named.find((each) => each.hide.id === entry.id)?.hide;
    if (hide === undefined || hashHide(hide) === entry.hash) return [];
    return [
      {
        code: 'layout-hide-changed',
        severity: 'warning',
        params: { hide: entry.id, file: entry.file },
        place: { file },
      },
    ];
  });
}
