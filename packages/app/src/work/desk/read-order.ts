import { readPattern } from '@hidebound/intake';
import type { PatternRead } from '@hidebound/intake';
import {
  DEFAULT_WORKSHOP,
  completeOrder,
  leatherError,
  parseWorkshop,
  resolveOrder,
  resolvePieces,
} from '@hidebound/leather';
import type { Article, Order, ResolvedOrder, Workshop } from '@hidebound/leather';
import type { JobFile } from '../../job/job.js';
import { pathBeside } from '../../job/job.js';
import type { OrderRead } from '../desk-tasks.js';

export interface OrderInput {
  readonly path: string;
  readonly files: ReadonlyMap<string, JobFile>;
}

/** Reads one pattern's content. */
export type ReadPatternFile = typeof readPattern;

/** An order with its pieces, as it is before there need be hides. */
export async function readOrder(input: OrderInput, read: ReadPatternFile = readPattern): Promise<OrderRead> {
  const { order } = resolvedOrder(input);
  const patterns = new Map<string, PatternRead>();
  for (const file of patternsOf(order)) patterns.set(file, await patternOf(file, order, input, read));
  const { pieces, diagnostics } = resolvePieces(order, (file) => patterns.get(file)!);
  const found = [...[...patterns.values()].flatMap((read) => read.diagnostics), ...diagnostics];
  return { order, pieces, diagnostics: found };
}

export interface OrderResolved {
  /** Its articles read and its cutting filled in, and nothing else. */
  readonly written: Order;
  readonly order: ResolvedOrder;
  readonly workshop: Workshop;
}

export function resolvedOrder({ path, files }: OrderInput): OrderResolved {
  const file = files.get(path);
  if (file?.kind !== 'order') throw leatherError('missing-file', { file: path });
  const workshop = workshopOf(files);
  const readArticle = (name: string): Article => {
    const named = files.get(pathBeside(path, name));
    if (named?.kind === 'article') return named.article;
    throw leatherError('missing-file', { file: name });
  };
  const written = completeOrder(file.order, workshop, readArticle, { file: path });
  return { written, order: resolveOrder(written, workshop, { hidesLater: true }), workshop };
}

/** The workshop's own values, where the job has them. */
export function workshopOf(files: ReadonlyMap<string, JobFile>): Workshop {
  for (const [path, file] of files) {
    if (file.kind === 'text' && /(^|\/)workshop\.ya?ml$/i.test(path))
      return parseWorkshop(file.text, { file: path });
  }
  return DEFAULT_WORKSHOP;
}

export function patternsOf(order: ResolvedOrder): Set<string> {
  return new Set(
    order.articles.flatMap(({ pieces }) =>
      pieces.flatMap(({ from }) => (from.kind === 'pattern' ? [from.file] : [])),
    ),
  );
}

/** A pattern as the order has it read, under the name that the order gives it. */
export function patternOf(
  file: string,
  order: Pick<ResolvedOrder, 'patterns'>,
  { path, files }: OrderInput,
  read: ReadPatternFile,
): Promise<PatternRead> {
  const pattern = files.get(pathBeside(path, file));
  if (pattern?.kind !== 'pattern') throw leatherError('missing-file', { file });
  const reading = order.patterns.find((each) => each.file === file) ?? { file, roles: [] };
  return read(pattern.bytes, { file, reading });
}
