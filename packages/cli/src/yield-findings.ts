import type { Diagnostic } from '@hidebound/leather';

/** Keys of the yield as the tables call them. */
const FIGURE_NAMES: Readonly<Record<string, string>> = {
  grossMm2: 'gross area',
  netMm2: 'net area',
  usableMm2: 'usable area',
  piecesMm2: 'in pieces',
  openingsMm2: 'openings',
  flawsMm2: 'flaws',
  edgeMm2: 'edge',
  betweenMm2: 'between pieces',
  offcutMm2: 'offcuts',
  usedUpMm2: 'used up',
  grossYield: 'gross yield',
  usableYield: 'usable yield',
  usedUpYield: 'yield of what is used up',
  hides: 'the hide itself',
};

const DIFFERS = 'layout-yield-differs';
const ALL_HIDES = 'all hides';

/** One finding for each hide whose yield figures are wrong, not one for each figure; the rest as it is, and first. */
export function gatherYieldFindings(findings: readonly Diagnostic[], file: string): readonly Diagnostic[] {
  const differing = findings.filter(({ code }) => code === DIFFERS);
  const named = [...new Set(differing.map(({ params }) => String(params['hide'])))];
  // Where a hide's figures are wrong, their sums are so too, and are not told.
  const hides = named.length > 1 ? named.filter((hide) => hide !== ALL_HIDES) : named;
  return [
    ...findings.filter(({ code }) => code !== DIFFERS),
    ...hides.map((hide): Diagnostic => {
      const figures = differing
        .filter(({ params }) => params['hide'] === hide)
        .map(({ params }) => FIGURE_NAMES[String(params['figure'])] ?? String(params['figure']))
        .join(', ');
      return { code: 'yield-figures-differ', severity: 'error', params: { hide, figures }, place: { file } };
    }),
  ];
}
