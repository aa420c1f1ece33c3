import { articleCard } from '@hidebound/leather';
import type { ArticleCard, LayablePiece, NamedHide } from '@hidebound/leather';
import type { JobFile } from '../../job/job.js';
import { readOrder, resolvedOrder } from '../desk/read-order.js';

export interface OrderCard {
  readonly card: ArticleCard;
  readonly pieces: readonly LayablePiece[];
}

/**
 * The card of an order's articles: prices, leather that is needed, and what of the job's hides would do for it.
 * @throws LeatherError where the order can't be read, and whatever `articleCard` throws
 */
export async function orderCard(path: string, files: ReadonlyMap<string, JobFile>): Promise<OrderCard> {
  const { written, order, workshop } = resolvedOrder({ path, files });
  const { pieces } = await readOrder({ path, files });
  const card = articleCard({
    written,
    order,
    pieces,
    workshop,
    stock: hidesOf(files),
    lastYields: lastYieldsOf(files),
  });
  return { card, pieces };
}

export function hidesOf(files: ReadonlyMap<string, JobFile>): NamedHide[] {
  return [...files].flatMap(([file, each]) => (each.kind === 'hide' ? [{ file, hide: each.hide }] : []));
}

/** By the article's name. */
function lastYieldsOf(files: ReadonlyMap<string, JobFile>): ReadonlyMap<string, number> {
  return new Map(
    [...files.values()].flatMap((file) =>
      file.kind === 'article' && file.article.lastYield !== undefined
        ? [[file.article.name, file.article.lastYield] as const]
        : [],
    ),
  );
}
