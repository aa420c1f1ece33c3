import type { Cutting, Order, OrderArticle } from '../model/order.js';

/** An article that an order takes from a file. */
export interface ArticleReference extends Pick<
  OrderArticle,
  'sets' | 'for' | 'value' | 'priority' | 'keepTogether'
> {
  readonly file: string;
}

/** A cutting method of which what is absent comes from the workshop's table. */
export type WrittenCutting = Pick<Cutting, 'method'> & Partial<Omit<Cutting, 'method'>>;

/** An order as its file says it: article files not read yet, the workshop's defaults not filled in. */
export interface OrderFile extends Omit<Order, 'articles' | 'cutting' | 'keepMm'> {
  readonly articles: readonly (OrderArticle | ArticleReference)[];
  readonly cutting: WrittenCutting;
  readonly keepMm?: readonly [number, number];
}

export function isArticleReference(article: OrderArticle | ArticleReference): article is ArticleReference {
  return 'file' in article;
}
