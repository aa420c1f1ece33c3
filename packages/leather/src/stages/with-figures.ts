import { hashHide } from '../hash/index.js';
import type { Hide } from '../model/hide.js';
import type { Layout } from '../model/layout.js';
import { offcutsOf } from '../offcuts/offcuts-of.js';
import type { QualityOptions } from '../hide/qualities.js';
import { hideUses, sumOfYields, yieldOfHide } from '../yield/layout-yield.js';

/** What marks mean to a layout, as it says itself. */
export function meaningsIn({ marks }: Pick<Layout, 'marks'>): QualityOptions {
  return marks === undefined ? {} : { workshop: marks, avoidCandidates: marks.avoidCandidates };
}

/** The layout with its yield, its offcuts and its hides' hashes as its placements and these hides give them. */
export function withFigures(layout: Layout, hides: readonly Hide[]): Layout {
  const { order, pieces, placements, roughCuts, swatches } = layout;
  const reading = meaningsIn(layout);
  const own = layout.hides.flatMap(({ id }) => hides.find((hide) => hide.id === id) ?? []);
  const uses = hideUses({ order, pieces, placements, roughCuts, swatches, hides: own, ...reading });
  const yields = uses.map((use) => yieldOfHide(use, reading));
  return {
    ...layout,
    hides: layout.hides.map((entry) => {
      const hide = own.find(({ id }) => id === entry.id);
      return hide === undefined ? entry : { ...entry, hash: hashHide(hide) };
    }),
    yield: { hides: yields, total: sumOfYields(yields) },
    offcuts: uses.flatMap(offcutsOf),
  };
}
