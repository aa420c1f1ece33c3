import { isArticleReference } from '@hidebound/leather';
import type { OrderFile } from '@hidebound/leather';
import { filesOfKind, pathBeside } from '../../../job/job.js';
import type { Job, JobFile } from '../../../job/job.js';

/** What a job makes, or keeps to be made, besides the order in front. */
export interface OtherGoods {
  readonly path: string;
  readonly name: string;
  readonly isOrder: boolean;
}

/** The other orders of a job, and the articles of which no order makes any. */
export function otherGoods(job: Job, front: string | undefined): readonly OtherGoods[] {
  const orders = filesOfKind(job, 'order');
  const made = new Set(orders.flatMap(([path, { order }]) => articlesOf(path, order)));
  return [
    ...orders
      .filter(([path]) => path !== front)
      .map(([path, { order }]) => ({ path, name: order.name, isOrder: true })),
    ...filesOfKind(job, 'article')
      .filter(([path, { article }]) => !made.has(path) && !made.has(article.name))
      .map(([path, { article }]) => ({ path, name: article.name, isOrder: false })),
  ];
}

/** By the path of the article's file, or by its name where the order has it written. */
function articlesOf(path: string, { articles }: OrderFile): readonly string[] {
  return articles.map((each) => (isArticleReference(each) ? pathBeside(path, each.file) : each.name));
}

/** A piece that is made somewhere in a job. */
export interface MadePiece {
  /** Of the order or the article file. */
  readonly path: string;
  readonly article: string;
  readonly piece: string;
}

/** Every piece of a job: those of the order in front first, then those of all else. */
export function piecesOfJob(job: Job, front: string | undefined): readonly MadePiece[] {
  const paths = [...(front === undefined ? [] : [front]), ...otherGoods(job, front).map(({ path }) => path)];
  return paths.flatMap((path) => piecesAt(job, path));
}

function piecesAt(job: Job, path: string): readonly MadePiece[] {
  const file = job.files.get(path);
  if (file?.kind === 'article')
    return file.article.pieces.map(({ name }) => ({ path, article: file.article.name, piece: name }));
  if (file?.kind !== 'order') return [];
  return file.order.articles.flatMap((each) => {
    const read = isArticleReference(each) ? job.files.get(pathBeside(path, each.file)) : undefined;
    const body = isArticleReference(each) ? (read?.kind === 'article' ? read.article : undefined) : each;
    return (body?.pieces ?? []).map(({ name }) => ({ path, article: body!.name, piece: name }));
  });
}

/** What the bench reckons with: pictures are large, and nothing is reckoned from them. */
export function filesWithoutPictures({ files }: Job): ReadonlyMap<string, JobFile> {
  return new Map([...files].filter(([, { kind }]) => kind !== 'picture'));
}
