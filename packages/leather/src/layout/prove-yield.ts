import type { Diagnostic } from '../model/diagnostic.js';
import type { AreaBalance, Layout } from '../model/layout.js';
import type { NamedHide, SheetOptions } from '../order/sheets.js';
import { layoutYield } from '../yield/layout-yield.js';

/** A placement off by 1 µm moves areas by this at most, along 10 m of cuts and borders, mm². */
const SAME_AREA_MM2 = 10;
/** Shares from 0 to 1, likewise. */
const SAME_SHARE = 1e-5;

/** Errors where the layout's yield figures are not those of its placements. Names the hide and the figure. */
export function proveYield(layout: Layout, hides: readonly NamedHide[], options: SheetOptions): Diagnostic[] {
  const { order, pieces, placements, roughCuts, swatches } = layout;
  const found = layoutYield({
    order,
    pieces,
    placements,
    roughCuts,
    swatches,
    hides: hides.map(({ hide }) => hide),
    workshop: options.workshop,
    avoidCandidates: options.avoidCandidates === true,
  });
  const ids = new Set([...found.hides, ...layout.yield.hides].map(({ hide }) => hide));
  return [
    ...[...ids].flatMap((id) =>
      compare(
        id,
        layout.yield.hides.find(({ hide }) => hide === id),
        found.hides.find(({ hide }) => hide === id),
      ),
    ),
    ...compare('all hides', layout.yield.total, found.total),
  ];
}

const FIGURES = [
  'grossMm2',
  'netMm2',
  'usableMm2',
  'piecesMm2',
  'openingsMm2',
  'flawsMm2',
  'edgeMm2',
  'betweenMm2',
  'offcutMm2',
  'usedUpMm2',
  'grossYield',
  'usableYield',
  'usedUpYield',
] as const satisfies readonly (keyof AreaBalance)[];

function compare(
  hide: string,
  stored: AreaBalance | undefined,
  found: AreaBalance | undefined,
): Diagnostic[] {
  const say = (figure: string, says: number, is: number): Diagnostic => ({
    code: 'layout-yield-differs',
    severity: 'error',
    params: { hide, figure, says, is },
    place: { at: `yield, ${hide}` },
  });
  if (stored === undefined || found === undefined) {
    return [say('hides', stored === undefined ? 0 : 1, found === undefined ? 0 : 1)];
  }
  return FIGURES.filter((figure) => {
    const most = figure.endsWith('Mm2') ? SAME_AREA_MM2 : SAME_SHARE;
    return !(Math.abs(stored[figure] - found[figure]) <= most);
  }).map((figure) => say(figure, stored[figure], found[figure]));
}
