import { formatArea, moneyText } from '@hidebound/leather';
import type { KindAnswer, CostRange, Span } from '@hidebound/leather';

/** Units in which areas are told. */
export type BuyingUnit = 'ft2' | 'm2' | 'dm2';

const MARK: Readonly<Record<BuyingUnit, string>> = { ft2: 'ft²', m2: 'm²', dm2: 'dm²' };

/** The unit in which the hides are sold; square feet, the trade's own, where they are sold by the hide or without a price. */
export function unitOf(kinds: readonly KindAnswer[]): BuyingUnit {
  const per = kinds.find(({ price }) => price !== undefined && price.per !== 'hide')?.price?.per;
  return per === undefined || per === 'hide' ? 'ft2' : per;
}

/** "18.85 ft² (1.751 m²)"; square metres once only. */
export function areaWords(mm2: number, unit: BuyingUnit): string {
  const own = formatArea(mm2, { unit });
  return unit === 'm2' ? own : `${own} (${formatArea(mm2, { unit: 'm2' })})`;
}

/** "20–24 ft²", "40 ft²": whole figures stay whole. */
export function areaSpanWords({ min, max }: Span, unit: BuyingUnit): string {
  const figure = (mm2: number): string => {
    const [text = ''] = formatArea(mm2, { unit }).split(' ');
    return text.replace(/\.0+$/, '');
  };
  const [from, to] = [figure(min), figure(max)];
  return `${from === to ? from : `${from}–${to}`} ${MARK[unit]}`;
}

/** "476.00–571.20 EUR". */
export function costWords({ from, to }: CostRange): string {
  const [first, last] = [moneyText(from), moneyText(to)];
  if (first === last) return first;
  return from.currency === to.currency ? `${first.split(' ')[0]!}–${last}` : `${first} – ${last}`;
}

export function unitMark(unit: BuyingUnit): string {
  return MARK[unit];
}
