import type { Layout } from '../model/layout.js';

/** Sets that an article has in a layout: for thread where as many as fit were wanted. */
export function setsOfLayout({ order, placements }: Layout): (article: string) => number | undefined {
  return (article) => {
    const asked = order.articles.find(({ name }) => name === article)?.sets;
    if (asked !== 'as many as fit') return asked;
    return new Set(placements.filter((each) => each.article === article).map(({ set }) => set)).size;
  };
}
