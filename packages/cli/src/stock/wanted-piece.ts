import type { Workshop } from '@hidebound/leather';
import { loadArticlePlan, loadOrderPlan } from '../io/load-order.js';
import type { OrderPlan } from '../io/load-order.js';
import { SIZE_LIMIT_MB, readFileLimited } from '../io/read-file.js';

const ARTICLE = /^\s*"?format"?\s*:\s*["']?hidebound\/article@/m;

/** What an order or an article is made of; the hides that it names are not read. */
export function loadWanted(path: string, workshop: Workshop): Promise<OrderPlan> {
  const head = new TextDecoder().decode(readFileLimited(path, SIZE_LIMIT_MB.data));
  return ARTICLE.test(head) ? loadArticlePlan(path, workshop) : loadOrderPlan(path, workshop);
}
