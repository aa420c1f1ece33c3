import { ringArea } from '@hidebound/geometry';
import type { Layout } from '../model/layout.js';
import type { Preparation } from '../model/order.js';
import type { Span } from '../model/workshop-rules.js';
import type { Workshop } from '../model/workshop.js';
import { liquidNeeds } from '../preparing/liquids.js';
import type { LiquidNeed } from '../preparing/liquids.js';
import { timesMoney } from '../units/exact-money.js';
import { quoteValue } from '../words/sentence.js';
import { middleOf } from '../workshop/figures.js';
import { mapSpan } from './cost-span.js';
import type { QuantitySpan } from './cost-span.js';
import type { LeatherShare } from './leather-lines.js';
import { listedPrice } from './price-list.js';
import type { MaterialLine } from './set-price.js';

/** A liquid that all pieces of a leather share. */
export interface LeatherLiquid {
  readonly leather: string;
  readonly line: MaterialLine;
}

/**
 * The liquids of a layout, by the area that is prepared: that of the rough cuts, or, where a leather is prepared whole,
 * what is used up of it; the rest keeps its colour and is used another time.
 */
export function layoutLiquids(
  layout: Layout,
  shares: readonly LeatherShare[],
  workshop: Workshop,
): LeatherLiquid[] {
  return layout.order.leathers.flatMap(({ name, preparation }) => {
    if (preparation === undefined) return [];
    const blocks = layout.roughCuts.filter(({ leather }) => leather === name);
    const usedUp = shares.filter(({ leather }) => leather === name).map(({ usedUpMm2 }) => usedUpMm2);
    const areas = blocks.length > 0 ? blocks.map(({ outline }) => Math.abs(ringArea(outline))) : usedUp;
    const area = areas.reduce((sum, each) => sum + each, 0);
    return area === 0 ? [] : liquidsOf(name, preparation, { low: area, likely: area, high: area }, workshop);
  });
}

/** The liquids for so much area of a leather, a line for each product; dye and thinner stand apart. */
export function liquidsOf(
  leather: string,
  preparation: Preparation,
  area: QuantitySpan,
  workshop: Workshop,
): LeatherLiquid[] {
  const [low, likely, high] = [area.low, area.likely, area.high].map((mm2) =>
    liquidNeeds(preparation, mm2, workshop).flatMap(productsOf),
  ) as [Product[], Product[], Product[]];
  const names = [...new Set(likely.map(({ name }) => name))];
  return names.map((name) => {
    const sum = (products: readonly Product[], of: (ml: Span) => number): number =>
      products.reduce((total, each) => total + (each.name === name && each.ml ? of(each.ml) : 0), 0);
    const quantity: QuantitySpan = {
      low: sum(low, ({ min }) => min),
      likely: sum(likely, middleOf),
      high: sum(high, ({ max }) => max),
    };
    const perMl = listedPrice(workshop, name, 'mL');
    const isKnown = likely.every((each) => each.name !== name || each.ml !== undefined);
    const line: MaterialLine = {
      kind: 'liquid',
      name,
      quantity,
      unit: 'mL',
      ...(perMl === undefined || !isKnown ? {} : { cost: mapSpan(quantity, (ml) => timesMoney(perMl, ml)) }),
      place: `the price of ${quoteValue(name)}`,
    };
    return { leather, line };
  });
}

interface Product {
  readonly name: string;
  readonly ml?: Span;
}

/** What the thinner is called where the order does not say it. */
const THINNER = 'thinner';

function productsOf({ product, ml, mix }: LiquidNeed): Product[] {
  if (mix === undefined) return [withMl(product, ml)];
  return [withMl(product, mix.dyeMl), withMl(mix.thinner ?? THINNER, mix.thinnerMl)];
}

function withMl(name: string, ml: Span | undefined): Product {
  return ml === undefined ? { name } : { name, ml };
}
