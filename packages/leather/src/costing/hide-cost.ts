import type { Hide, HidePrice } from '../model/hide.js';
import type { HideYield } from '../model/layout.js';
import type { Workshop } from '../model/workshop.js';
import { exactMoney, overMoney, shareOfMoney, timesMoney } from '../units/exact-money.js';
import type { ExactMoney } from '../units/exact-money.js';
import { areaOfUnit } from '../units/price-unit.js';
import { leatherError } from '../words/refuse.js';
import { quoteValue } from '../words/sentence.js';

/** What one hide cost, and how much of that a layout uses up. Sums are exact. */
export interface HideCost {
  readonly hide: string;
  readonly areas: HideYield;
  /** Which area the price is of; absent where it is for the hide, or where there is none. */
  readonly pricedMm2?: number;
  /** Of the whole hide; absent: nobody gave one. */
  readonly whole?: ExactMoney;
  /** Of what is used up: the whole price by used-up over net area. What is left keeps its share. */
  readonly usedUp?: ExactMoney;
  /** For comparison: of the pieces alone, as if nothing were lost, … */
  readonly piecesOnly?: ExactMoney;
  /** … and of the pieces at the price of usable leather. */
  readonly byUsable?: ExactMoney;
  /** Price over usable area, for one ft² and one dm². */
  readonly perUsableFt2?: ExactMoney;
  readonly perUsableDm2?: ExactMoney;
}

/**
 * The cost of a hide and of what a layout uses up of it.
 * @throws LeatherError `price-without-area`
 */
export function hideCost(hide: Hide, areas: HideYield, workshop: Pick<Workshop, 'prices'>): HideCost {
  const price = hide.price ?? listedHidePrice(hide, workshop);
  if (price === undefined) return { hide: hide.id, areas };
  const pricedMm2 = price.per === 'hide' ? undefined : pricedArea(hide, price, areas.grossMm2);
  const whole = pricedMm2 === undefined ? exactMoney(price) : areaPrice(price, pricedMm2);
  const { netMm2, usableMm2, usedUpMm2, piecesMm2 } = areas;
  const perUsable = (unit: 'ft2' | 'dm2') =>
    usableMm2 > 0 ? { value: timesMoney(overMoney(whole, usableMm2), areaOfUnit(unit)) } : undefined;
  const [ft2, dm2] = [perUsable('ft2'), perUsable('dm2')];
  return {
    hide: hide.id,
    areas,
    ...(pricedMm2 === undefined ? {} : { pricedMm2 }),
    whole,
    usedUp: shareOfMoney(whole, usedUpMm2, netMm2),
    piecesOnly: shareOfMoney(whole, piecesMm2, netMm2),
    byUsable: shareOfMoney(whole, piecesMm2, usableMm2),
    ...(ft2 === undefined ? {} : { perUsableFt2: ft2.value }),
    ...(dm2 === undefined ? {} : { perUsableDm2: dm2.value }),
  };
}

/**
 * True price of an area that can be used: the price over it, for a unit of area. 280 for a side of 22 ft², of which
 * 15 % are lost, are 280 / (22 × 0.85) = 14.97 a usable ft² (a supplier's guide to pricing).
 * @throws LeatherError `yield-of-zero`
 */
export function pricePerUsable(price: ExactMoney, areaInUnits: number, usableShare: number): ExactMoney {
  if (areaInUnits <= 0 || usableShare <= 0) throw leatherError('yield-of-zero', { what: 'The usable area' });
  return overMoney(overMoney(price, areaInUnits), usableShare);
}

/** By the workshop's list: for a hide of this name or lot. */
function listedHidePrice({ id, lot }: Hide, workshop: Pick<Workshop, 'prices'>): HidePrice | undefined {
  const names = lot === undefined ? [id] : [id, lot];
  const line = workshop.prices.find(
    ({ name, per }) =>
      names.includes(name) && (per === 'hide' || per === 'ft2' || per === 'm2' || per === 'dm2'),
  );
  return line && { ...line.price, per: line.per as HidePrice['per'], of: 'invoiced' };
}

/** An offcut has no invoice of its own: what was measured counts. */
function pricedArea(hide: Hide, price: HidePrice, grossMm2: number): number {
  const { invoicedMm2, measuredMm2 } = hide.area;
  const measured = measuredMm2 ?? grossMm2;
  const fallback = price.of === 'measured' || hide.parent !== undefined ? measured : undefined;
  const area = (price.of === 'invoiced' ? invoicedMm2 : undefined) ?? fallback;
  if (area !== undefined) return area;
  throw leatherError('price-without-area', {
    hide: quoteValue(hide.id),
    price: quoteValue(`${price.amount} ${price.currency}`),
    per: price.per,
  });
}

function areaPrice(price: HidePrice, areaMm2: number): ExactMoney {
  return overMoney(timesMoney(exactMoney(price), areaMm2), areaOfUnit(price.per as 'ft2'));
}
