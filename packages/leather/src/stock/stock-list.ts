import type { ThicknessRange } from '../model/marks.js';
import type { Hide } from '../model/hide.js';
import type { Workshop } from '../model/workshop.js';
import type { NamedHide } from '../order/sheets.js';
import { thicknessField } from '../hide/fields.js';
import { holdsAnyWay, stockSizes, usableParts } from './stock-sizes.js';
import type { StockSizes } from './stock-sizes.js';
import { stripWorthKeeping } from './strips-left.js';

/** A hide or offcut as the stock's list shows it. */
export interface StockRow extends NamedHide {
  readonly sizes: StockSizes;
  /** From its thinnest to its thickest place; absent: not known. */
  readonly thickness?: ThicknessRange;
  /** It holds the rectangle or the strip that the workshop keeps offcuts for. */
  readonly isWorthKeeping: boolean;
}

/** What of a stock is to be shown; what is absent does not count. */
export interface StockFilter {
  /** A word of the colour. */
  readonly colour?: string | undefined;
  readonly tannage?: string | undefined;
  readonly lot?: string | undefined;
  /** Leather of a thickness within this span somewhere; of unknown thickness is shown too. */
  readonly thickness?: ThicknessRange | undefined;
  /** It must hold a rectangle of these sides, turned any way, clear of what is never to be used. */
  readonly leastMm?: readonly [number, number] | undefined;
  readonly only?: 'hides' | 'offcuts' | undefined;
  /** Also what is cut already. */
  readonly withCut?: boolean;
}

export const STOCK_ORDERS = ['name', 'size', 'thickness', 'colour', 'lot', 'place'] as const;
export type StockOrder = (typeof STOCK_ORDERS)[number];

export interface ListInput {
  readonly hides: readonly NamedHide[];
  readonly workshop: Workshop;
  /** Strips are measured at this width; absent: the workshop's narrowest. */
  readonly stripWidthMm?: number | undefined;
  readonly filter?: StockFilter;
  readonly order?: StockOrder | undefined;
}

/** The hides that pass, measured and put in order. */
export function listStock({
  hides,
  workshop,
  stripWidthMm,
  filter = {},
  order = 'name',
}: ListInput): StockRow[] {
  const strip = stripWorthKeeping(workshop);
  return hides
    .filter(({ hide }) => passes(hide, filter, workshop))
    .map(({ file, hide }): StockRow => {
      const parts = usableParts(hide, { workshop });
      const thickness = thicknessOf(hide);
      return {
        file,
        hide,
        sizes: stockSizes(hide, { workshop, stripWidthMm: stripWidthMm ?? strip.widthMm }),
        ...(thickness === undefined ? {} : { thickness }),
        isWorthKeeping:
          holdsAnyWay(parts, workshop.keepMm) || holdsAnyWay(parts, [strip.widthMm, strip.lengthMm]),
      };
    })
    .sort((a, b) => COMPARE[order](a, b) || byName(a, b));
}

function passes(hide: Hide, filter: StockFilter, workshop: Workshop): boolean {
  const { colour, tannage, lot, thickness, leastMm, only, withCut } = filter;
  const range = thicknessOf(hide);
  return (
    (withCut === true || hide.state !== 'cut') &&
    (only === undefined || (hide.cut === 'offcut') === (only === 'offcuts')) &&
    holdsWord(hide.leather.colour, colour) &&
    holdsWord(hide.leather.tannage, tannage) &&
    (lot === undefined || hide.lot?.toLowerCase() === lot.trim().toLowerCase()) &&
    (thickness === undefined ||
      range === undefined ||
      (range.minMm <= thickness.maxMm && range.maxMm >= thickness.minMm)) &&
    (leastMm === undefined || holdsAnyWay(usableParts(hide, { workshop }), leastMm))
  );
}

function holdsWord(text: string | undefined, word: string | undefined): boolean {
  return word === undefined || (text ?? '').toLowerCase().includes(word.trim().toLowerCase());
}

function thicknessOf(hide: Hide): ThicknessRange | undefined {
  const field = thicknessField(hide);
  return field === undefined ? undefined : { minMm: field.rangeMm[0], maxMm: field.rangeMm[1] };
}

type Compare = (a: StockRow, b: StockRow) => number;

const byName: Compare = (a, b) => compareText(a.hide.id, b.hide.id);

/** What is not known stands at the end. */
const COMPARE: Readonly<Record<StockOrder, Compare>> = {
  name: byName,
  size: (a, b) => b.sizes.usableMm2 - a.sizes.usableMm2,
  thickness: (a, b) => (a.thickness?.minMm ?? Infinity) - (b.thickness?.minMm ?? Infinity) || 0,
  colour: (a, b) => compareKnown(a.hide.leather.colour, b.hide.leather.colour),
  lot: (a, b) => compareKnown(a.hide.lot, b.hide.lot),
  place: (a, b) => compareKnown(a.hide.storedAt, b.hide.storedAt),
};

function compareKnown(a: string | undefined, b: string | undefined): number {
  if (a === undefined || b === undefined) return Number(a === undefined) - Number(b === undefined);
  return compareText(a, b);
}

/** Figures within names count as figures: side-9 goes before side-12. The same on every machine. */
function compareText(a: string, b: string): number {
  const [as, bs] = [a, b].map((text) => text.toLowerCase().split(/(\d+)/)) as [string[], string[]];
  for (let i = 0; i < Math.min(as.length, bs.length); i++) {
    const [x, y] = [as[i]!, bs[i]!];
    if (x === y) continue;
    if (i % 2 === 1 && Number(x) !== Number(y)) return Number(x) - Number(y);
    return x < y ? -1 : 1;
  }
  return as.length - bs.length;
}
