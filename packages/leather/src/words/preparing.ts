import type { SentenceTable } from './sentence.js';

export interface OnLeather {
  readonly leather: string;
}

/** Sentences on how leather is prepared. */
export const PREPARING_SENTENCES = {
  'coverage-reversed': (p: { readonly product: string; readonly from: number; readonly to: number }) =>
    `The coverage of "${p.product}" goes from ${p.from} to ${p.to} mL per m²; the smaller figure comes first.`,
  'coverage-not-lighter': (p: {
    readonly product: string;
    readonly before: number;
    readonly after: number;
  }) =>
    `The bottle of "${p.product}" weighed ${p.before} g before and ${p.after} g after; after a coat it must weigh less.`,

  'prepare-block-cut': (p: { readonly id: string }) =>
    `Of the rough cut "${p.id}" pieces are cut already, so it is left out of the plan.`,
  'prepare-hide-cut': (p: { readonly hide: string; readonly file: string }) =>
    `The hide "${p.hide}" (${p.file}) is marked as cut, so nothing of it is left to prepare; lay the order anew on what you have.`,
  'prepare-hide-changed': (p: { readonly hide: string; readonly file: string }) =>
    `The hide "${p.hide}" (${p.file}) changed since this layout was made; lay the order anew, then prepare.`,
  'prepare-margin-small': (p: {
    readonly leather: string;
    readonly ids: string;
    readonly count: number;
    readonly hasMm: number;
    readonly needMm: number;
  }) =>
    `The ${p.count === 1 ? 'rough cut' : 'rough cuts'} ${p.ids} ${p.count === 1 ? 'keeps' : 'keep'} ${p.hasMm} mm around the pieces; leather moves when it is wetted and dried, so give the pieces of "${p.leather}" a margin of ${p.needMm} mm or more.`,
  'prepare-not-tooled': (p: OnLeather & { readonly tannage: string }) =>
    `"${p.leather}" is to be tooled, but ${p.tannage} leather does not hold tooling; take vegetable-tanned leather.`,
  'prepare-not-moulded': (p: OnLeather & { readonly tannage: string }) =>
    `"${p.leather}" is to be moulded, but ${p.tannage} leather does not keep a moulded form; take vegetable-tanned leather.`,
  'prepare-no-water': (p: OnLeather & { readonly tannage: string }) =>
    `"${p.leather}" is wetted in this preparation, and water takes the tannage out of ${p.tannage} leather; try it on a scrap first.`,
  'prepare-dyed-through': (p: OnLeather & { readonly tannage: string }) =>
    `"${p.leather}" is ${p.tannage} leather, which takes dye at the bench badly and may rub off; try it on a scrap first.`,
  'prepare-full-of-oil': (p: OnLeather & { readonly tannage: string }) =>
    `"${p.leather}" is ${p.tannage} leather, full of oil as bought: it needs no feeding, and dye holds badly; try it on a scrap first.`,
  'prepare-on-finished': (p: OnLeather & { readonly finish: string }) =>
    `"${p.leather}" is bought with a finish (${p.finish}); dye does not go through a finish and rubs off. Take unfinished leather, or try it on a scrap first.`,
  'prepare-fed-later': (p: OnLeather & { readonly product: string; readonly isLater: number }) =>
    p.isLater === 1
      ? `"${p.leather}" gets no "${p.product}" before this dye, which would not hold; it is put on after.`
      : `"${p.leather}" gets no "${p.product}": the leather is full of oil as bought.`,
  'prepare-base-unknown': (p: OnLeather & { readonly dye: string }) =>
    `The order does not say what the dye "${p.dye}" of "${p.leather}" is made up with; write dyeBase: spirit, oil, water or pigment. Until then it is given the longest times.`,
  'prepare-thinner-unknown': (p: OnLeather & { readonly dye: string }) =>
    `The order does not say what "${p.dye}" is thinned with; use only the thinner that the dye's label names.`,
  'prepare-coverage-unknown': (p: OnLeather & { readonly product: string }) =>
    `Nobody has measured how far "${p.product}" goes, so no quantity is told; weigh the bottle before and after a coat, and write it under coverages in workshop.yaml.`,
  'prepare-worked-without-margin': (p: OnLeather & { readonly hide: string; readonly worked: string }) =>
    `Pieces of "${p.leather}" on ${p.hide} are ${p.worked} but have no margin, so they can't be cut oversize; write a margin for them in the order.`,
  'prepare-others-on-hide': (p: OnLeather & { readonly hide: string }) =>
    `Pieces of other leathers lie on ${p.hide}, which is prepared whole for "${p.leather}"; cut them out before, or give the pieces of "${p.leather}" a margin so that they get rough cuts.`,
  'prepare-no-room-for-swatch': (p: { readonly where: string }) =>
    `In the waste there is no room for a test piece at ${p.where}; cut one from the margin or from an offcut of the same hide.`,
} as const satisfies SentenceTable;
