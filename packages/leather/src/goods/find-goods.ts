import type { Part } from '../model/order.js';
import type { GoodsRule, TannageRule } from '../model/workshop-rules.js';
import type { Workshop } from '../model/workshop.js';

/** Letter case, hyphens and a plural "s" make no other goods. */
export function plainName(name: string): string {
  const words = name.toLowerCase().replace(/[-_\s]+/g, ' ');
  return words.trim().replace(/s$/, '');
}

/** The row of the goods by its name or by what else it is called; absent where the table has none. */
export function goodsRowOf(goods: string, workshop: Pick<Workshop, 'goods'>): GoodsRule | undefined {
  const wanted = plainName(goods);
  return (
    workshop.goods.find((row) => plainName(row.goods) === wanted) ??
    workshop.goods.find((row) => row.alsoCalled.some((name) => plainName(name) === wanted))
  );
}

/**
 * The row of a part of these goods: "wallet pocket" for the pockets of a wallet (whatever the order calls it), else the
 * row of the part itself ("gusset", "lining"); absent where the table has neither.
 */
export function partRowOf(
  goods: string,
  part: Part,
  workshop: Pick<Workshop, 'goods'>,
): GoodsRule | undefined {
  const row = goodsRowOf(goods, workshop);
  const names = [goods, ...(row === undefined ? [] : [row.goods, ...row.alsoCalled])];
  for (const name of names) {
    const found = goodsRowOf(`${name} ${part}`, workshop);
    if (found !== undefined) return found;
  }
  return goodsRowOf(part, workshop);
}

/** The row of a tannage as a hide, a row of goods or an order calls it. */
export function tannageRowOf(tannage: string, workshop: Pick<Workshop, 'tannages'>): TannageRule | undefined {
  const wanted = plainTannage(tannage);
  const names = (row: TannageRule): string[] => [row.tannage, ...row.alsoCalled].map(plainTannage);
  const exact = workshop.tannages.find((row) => names(row).includes(wanted));
  if (exact !== undefined) return exact;
  // "vegetable, Italian": the first words say it. The longest name wins: "chrome retan" is no "chrome".
  const found = workshop.tannages
    .flatMap((row) => names(row).map((name) => ({ row, name })))
    .filter(({ name }) => wanted.startsWith(`${name} `) || wanted.startsWith(`${name},`))
    .sort((a, b) => b.name.length - a.name.length);
  return found[0]?.row;
}

function plainTannage(tannage: string): string {
  return plainName(tannage)
    .replace(/\b(tanned|tannage|leather)\b/g, 'tan')
    .replace(/( tan)+$/, '')
    .trim();
}
