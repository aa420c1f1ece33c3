import { formatArea, moneyText } from '@hidebound/leather';
import type { CostRow, CostUnit, Money, CoinSpan, QuantitySpan } from '@hidebound/leather';

/** Sums and quantities of costing, in words. */

/** "12.50 EUR", or "12.50–14.00 EUR" where it is not sure. */
export function spanText(span: CoinSpan): string {
  return `${bareSpan(span)} ${span.likely.currency}`;
}

/** The same without the currency, for columns that name it in their head. */
export function bareSpan({ low, likely, high }: CoinSpan): string {
  if (low.amount === high.amount) return amountText(low);
  // What rounding adds may be more for the lower price: then there is no from and to.
  if (Number(low.amount) > Number(high.amount)) return amountText(likely);
  return `${amountText(low)}–${amountText(high)}`;
}

export function amountText(money: Money): string {
  return moneyText(money).slice(0, -money.currency.length - 1);
}

/** "3.2 dm²", "1.25 m", "14–22 mL". */
export function quantityText({ low, high }: QuantitySpan, unit: CostUnit): string {
  const [from, to] = [numberIn(low, unit), numberIn(high, unit)];
  const name = UNIT_NAMES[unit];
  return `${from === to ? from : `${from}–${to}`}${name === '' ? '' : ` ${name}`}`;
}

const UNIT_NAMES: Readonly<Record<CostUnit, string>> = { 'mm²': 'dm²', mm: 'm', mL: 'mL', each: '', h: 'h' };

function numberIn(value: number, unit: CostUnit): string {
  switch (unit) {
    case 'mm²':
      return areaText(value);
    case 'mm':
      return (value / 1000).toFixed(2);
    case 'mL':
      return value < 10 ? value.toFixed(1) : value.toFixed(0);
    case 'each':
    case 'h':
      return shortNumber(value);
  }
}

/** In dm², without the unit: for columns that name it in their head. */
export function areaText(mm2: number): string {
  return formatArea(mm2, { unit: 'dm2' }).replace(' dm²', '');
}

/** Two decimals at most, none that says nothing. */
export function shortNumber(value: number): string {
  return String(Number(value.toFixed(2)));
}

export function percentText({ low, high }: QuantitySpan): string {
  return low === high ? `${shortNumber(low)} %` : `${shortNumber(low)}–${shortNumber(high)} %`;
}

/** What a row of a cost sheet is called. */
export function rowName({ kind, name, percent }: CostRow): string {
  const share = percent === undefined ? '' : percentText(percent);
  switch (kind) {
    case 'leather':
      return `leather, ${name ?? ''}`;
    case 'supplies':
      return `supplies, ${share} of the leather`;
    case 'return on materials':
      return `return on materials, ${share}`;
    case 'overhead':
      return `overhead, ${share} of materials and work`;
    case 'profit':
      return `profit, ${share} of all costs`;
    case 'tax':
      return `tax, ${share}`;
    case 'before tax':
      return 'price before tax';
    case 'price':
      return 'price';
    default:
      return name ?? kind;
  }
}
