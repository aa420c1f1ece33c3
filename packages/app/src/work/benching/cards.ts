import { articleCard, cardOrder } from '@hidebound/leather';
import type { ArticleCard, LayablePiece, NamedHide } from '@hidebound/leather';
import type { JobFile } from '../../job/job.js';
import { readOrder, resolvedOrder, workshopOf } from '../desk/read-order.js';
import type { OrderInput } from '../desk/read-order.js';

export interface OrderCard {
  readonly card: ArticleCard;
  readonly pieces: readonly LayablePiece[];
}

/** One set is cut soon; no day stands on what is shown of it. */
const NO_DAY = '2000-01-01';

/** An order of the job, or an order of one set of an article file, under a name that no file has. */
export function asOrder(path: string, files: ReadonlyMap<string, JobFile>): OrderInput {
  const file = files.get(path);
  if (file?.kind !== 'article') return { path, files };
  const { article } = file;
  const order = cardOrder([{ article, sets: 1 }], {
    name: article.name,
    date: NO_DAY,
    cutting: workshopOf(files).cuttingMethods[0]!.method,
    colours: new Map(),
  });
  const at = `${path}#one-set`;
  return { path: at, files: new Map([...files, [at, { kind: 'order', order }]]) };
}

/**
 * The card of an order's articles: prices, leather that is needed, and what of the job's hides would do for it.
 * @throws LeatherError where the order can't be read, and whatever `articleCard` throws
 */
export async function orderCard(path: string, files: ReadonlyMap<string, JobFile>): Promise<OrderCard> {
  const input = asOrder(path, files);
  const { written, order, workshop } = resolvedOrder(input);
  const { pieces } = await readOrder(input);
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
