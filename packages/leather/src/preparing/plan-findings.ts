import { hashHide } from '../hash/index.js';
import { leatherError } from '../words/refuse.js';
import type { Diagnostic } from '../model/diagnostic.js';
import type { Layout } from '../model/layout.js';
import type { NamedHide } from '../order/sheets.js';
import type { PreparePlan } from './prepare-plan.js';
import type { SwatchWish } from './swatches.js';

/** What there is to say about a plan, with the layout's file as its place. */
export function planFindings(plan: PreparePlan, file: string): Diagnostic[] {
  return [
    ...plan.findings.map((finding) => ({ ...finding, place: { file, ...finding.place } })),
    ...plan.swatches.without.map((wish) => noRoom(wish, file)),
  ];
}

/**
 * What was planned for another hide, or one that is gone, would be wrong without a sign of it. Throws
 * `prepare-hide-cut` and `prepare-hide-changed`.
 */
export function refuseSpentHides(layout: Layout, named: readonly NamedHide[], file: string): void {
  for (const { id, hash, file: hideFile } of layout.hides) {
    const hide = named.find((each) => each.hide.id === id)?.hide;
    const params = { hide: id, file: hideFile };
    if (hide?.state === 'cut') throw leatherError('prepare-hide-cut', params, { file });
    if (hide === undefined || hashHide(hide) !== hash)
      throw leatherError('prepare-hide-changed', params, { file });
  }
}

function noRoom({ hide, roughCut }: SwatchWish, file: string): Diagnostic {
  return {
    code: 'prepare-no-room-for-swatch',
    severity: 'note',
    params: { where: roughCut ?? hide },
    place: { file },
  };
}
