import { exactMoney, formatArea, moneyText, thicknessWords, toCoins } from '@hidebound/leather';
import type { Hide, StockRow } from '@hidebound/leather';

/** A length that fits for sure: whole mm, rounded down. */
export function fitsMm(mm: number): string {
  return String(Math.floor(mm + 0.001));
}

/** "210 × 80 mm", along and across the direction, or the longer side first. */
export function rectangleWords(
  rectangle: { readonly alongMm: number; readonly acrossMm: number } | undefined,
  isByDirection = false,
): string {
  if (rectangle === undefined) return 'none';
  const { alongMm, acrossMm } = rectangle;
  const [a, b] = isByDirection || alongMm >= acrossMm ? [alongMm, acrossMm] : [acrossMm, alongMm];
  return `${fitsMm(a)} × ${fitsMm(b)} mm`;
}

/** Whole mm of an extent. */
export function extentWords({ sizes }: StockRow): string {
  return `${Math.round(sizes.alongMm)} × ${Math.round(sizes.acrossMm)} mm`;
}

/** Areas of the stock are told in dm², small or large, so that they can be compared. */
export function areaWords(mm2: number): string {
  return formatArea(mm2, { unit: 'dm2' });
}

export function stripWords(strip: { readonly lengthMm: number } | undefined): string {
  return strip === undefined ? 'none' : `${fitsMm(strip.lengthMm)} mm`;
}

export function thicknessOfRow({ thickness }: StockRow): string {
  return thickness === undefined ? 'not known' : thicknessWords(thickness.minMm, thickness.maxMm);
}

/** "6.40 EUR", "9.20 EUR a ft²"; nothing where it has no price. */
export function priceWords({ price }: Hide): string {
  if (price === undefined) return '';
  const { per } = price;
  // An offcut's share of its hide's price has more decimals than there are coins.
  if (per === 'hide') return moneyText(toCoins(exactMoney(price)));
  return `${price.amount} ${price.currency}${{ ft2: ' a ft²', m2: ' a m²', dm2: ' a dm²' }[per]}`;
}

/** "offcut, vegetable, dark brown": in one cell, so that a list with all else fits a page. */
export function leatherWords({ cut, leather }: Hide): string {
  return [cut, leather.tannage, leather.colour].filter((word) => word !== undefined).join(', ');
}

/** "3 hides and 12 offcuts". */
export function countOfRows(rows: readonly StockRow[]): string {
  const offcuts = rows.filter(({ hide }) => hide.cut === 'offcut').length;
  const hides = rows.length - offcuts;
  const words = (count: number, one: string): string[] =>
    count === 0 ? [] : [`${count} ${one}${count === 1 ? '' : 's'}`];
  return [...words(hides, 'hide'), ...words(offcuts, 'offcut')].join(' and ') || 'nothing';
}
