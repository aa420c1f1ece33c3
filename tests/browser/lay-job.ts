import { runNest } from '@hidebound/geometry';
import { readPatternSvg } from '@hidebound/intake';
import {
  DEFAULT_WORKSHOP,
  completeOrder,
  layoutFrom,
  nestProblemFor,
  parseArticle,
  parseHide,
  parseOrder,
  resolveOrder,
  resolvePieces,
  writeLayout,
} from '@hidebound/leather';

/** A job as a browser holds it: the order's name and the texts of all files, by their path beside the order. */
export interface LayJob {
  readonly orderFile: string;
  readonly files: Readonly<Record<string, string>>;
  readonly seed: number;
  readonly joins: number;
}

/** Order in, layout file out, through the same packages in Node and in a browser. */
export function layJob({ orderFile, files, seed, joins }: LayJob): string {
  const textOf = (file: string): string => {
    const text = files[file];
    if (text === undefined) throw new Error(`The job has no file ${file}.`);
    return text;
  };
  const written = parseOrder(textOf(orderFile), { file: orderFile });
  const readArticle = (file: string) => parseArticle(textOf(file), { file });
  const order = resolveOrder(completeOrder(written, DEFAULT_WORKSHOP, readArticle, { file: orderFile }));
  const { pieces } = resolvePieces(order, (file) => {
    const reading = order.patterns.find((pattern) => pattern.file === file) ?? { file, roles: [] };
    return readPatternSvg(textOf(file), { file, reading });
  });
  const hideFiles = [...new Set(order.leathers.flatMap(({ hides }) => hides))];
  const hides = hideFiles.map((file) => ({ file, hide: parseHide(textOf(file), { file }) }));
  const budget = { seed, streams: 1, joins };
  const problem = nestProblemFor({ order, pieces, hides, budget });
  const answer = runNest(problem.problem);
  const origin = { version: 'test', seed, effort: joins, streams: 1 };
  return writeLayout(layoutFrom({ order, pieces, hides, problem, answer, origin }));
}
