import type { HardwareLine, ResolvedArticle, ResolvedOrder, ThreadLine } from '../model/order.js';
import type { StitchSeam } from '../model/stitch.js';
import type { Workshop } from '../model/workshop.js';
import { exactMoney, overMoney, timesMoney } from '../units/exact-money.js';
import type { ExactMoney } from '../units/exact-money.js';
import { quoteValue } from '../words/sentence.js';
import { certain } from './cost-span.js';
import { listedPrice } from './price-list.js';
import type { MaterialLine } from './set-price.js';

type Prices = Pick<Workshop, 'prices'>;

/** Hardware of one set of an article. */
export function hardwareLines(
  article: Pick<ResolvedArticle, 'name' | 'hardware'>,
  prices: Prices,
): MaterialLine[] {
  return article.hardware.map((line) => hardwareLine(line, prices, article.name));
}

/** What the order asks for beyond its sets. */
export function orderHardware({ hardware }: Pick<ResolvedOrder, 'hardware'>, prices: Prices): MaterialLine[] {
  return hardware.map((line) => hardwareLine(line, prices, 'the order'));
}

function hardwareLine({ name, count, price }: HardwareLine, prices: Prices, of: string): MaterialLine {
  const one = price === undefined ? listedPrice(prices, name, 'each') : exactMoney(price);
  return {
    kind: 'hardware',
    name,
    quantity: certain(count),
    unit: 'each',
    ...(one === undefined ? {} : { cost: certain(timesMoney(one, count)) }),
    place: `the hardware ${quoteValue(name)} of ${of}`,
  };
}

/**
 * Thread of one set of an article: what its seams take, or what the article counts on where that is more. A price that
 * stands with a length is for that length; one without is for the set.
 */
export function threadLines(
  article: Pick<ResolvedArticle, 'name' | 'threads'>,
  order: Pick<ResolvedOrder, 'threads'>,
  seams: readonly StitchSeam[],
  prices: Prices,
): MaterialLine[] {
  const own = seams.filter((seam) => seam.article === article.name && (seam.threadMm ?? 0) > 0);
  const names = [
    ...new Set([...article.threads, ...own.map(({ thread }) => ({ name: thread }))].map((each) => each.name)),
  ];
  return names.flatMap((name): MaterialLine[] => {
    const lines = article.threads.filter((line) => line.name === name);
    const sewnMm = own
      .filter(({ thread }) => thread === name)
      .reduce((sum, { perSet, threadMm = 0 }) => sum + perSet * threadMm, 0);
    const statedMm = lines.reduce((sum, { lengthMm = 0 }) => sum + lengthMm, 0);
    const lengthMm = Math.max(sewnMm, statedMm);
    const place = `the thread ${quoteValue(name)} of ${article.name}`;
    const lump = lines.find(isLump)?.price;
    if (lump !== undefined) {
      const set = { quantity: certain(1), unit: 'each' as const, cost: certain(exactMoney(lump)) };
      return [{ kind: 'thread', name, ...set, place }];
    }
    if (lengthMm === 0) return [];
    const perMm = pricePerMm([...lines, ...order.threads], name) ?? listedPrice(prices, name, 'mm');
    return [
      {
        kind: 'thread',
        name,
        quantity: certain(lengthMm),
        unit: 'mm',
        ...(perMm === undefined ? {} : { cost: certain(timesMoney(perMm, lengthMm)) }),
        place,
      },
    ];
  });
}

/** Thread that the order has for all, and of which no set says how much it takes. */
export function orderThread(
  order: Pick<ResolvedOrder, 'threads'>,
  usedBySets: ReadonlySet<string>,
  prices: Prices,
): MaterialLine[] {
  return order.threads
    .filter(({ name }) => !usedBySets.has(name))
    .flatMap(({ name, lengthMm, price }): MaterialLine[] => {
      if (lengthMm === undefined && price === undefined) return [];
      const perMm = lengthMm === undefined ? undefined : listedPrice(prices, name, 'mm');
      const listed = perMm && timesMoney(perMm, lengthMm!);
      const cost = price === undefined ? listed : exactMoney(price);
      return [
        {
          kind: 'thread',
          name,
          quantity: certain(lengthMm ?? 1),
          unit: lengthMm === undefined ? 'each' : 'mm',
          ...(cost === undefined ? {} : { cost: certain(cost) }),
          place: `the thread ${quoteValue(name)} of the order`,
        },
      ];
    });
}

/** A price for the set, whatever the length. */
function isLump({ price, lengthMm = 0 }: ThreadLine): boolean {
  return price !== undefined && lengthMm === 0;
}

function pricePerMm(lines: readonly ThreadLine[], name: string): ExactMoney | undefined {
  const line = lines.find(
    (each) => each.name === name && each.price !== undefined && (each.lengthMm ?? 0) > 0,
  );
  return line && overMoney(exactMoney(line.price!), line.lengthMm!);
}
