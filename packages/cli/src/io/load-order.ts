import type { PatternRead } from '@hidebound/intake';
import {
  DEFAULT_WORKSHOP,
  completeOrder,
  parseArticle,
  parseOrder,
  planStitches,
  resolveOrder,
  resolvePieces,
} from '@hidebound/leather';
import type {
  Article,
  Diagnostic,
  LayablePiece,
  NamedHide,
  Order,
  OrderFile,
  OrderStage,
  ResolvedOrder,
  Workshop,
} from '@hidebound/leather';
import { besideFile, loadHide, readText } from './load-files.js';
import { loadPattern } from './load-pattern.js';

/** An order with all that it names: its articles, its pieces, its hides. */
export interface OrderJob {
  /** As it is written, articles from files included: it tells a piece's own word from its part's rule. */
  readonly written: Order;
  readonly order: ResolvedOrder;
  readonly pieces: readonly LayablePiece[];
  readonly hides: readonly NamedHide[];
  readonly diagnostics: readonly Diagnostic[];
}

/** Reads an order; files that it names lie beside it. What it leaves open, the workshop says. */
export async function loadOrderJob(path: string, workshop: Workshop = DEFAULT_WORKSHOP): Promise<OrderJob> {
  const plan = await readPlan(path, workshop, {});
  const files = new Set(plan.order.leathers.flatMap(({ hides }) => hides));
  const hides = [...files].map((file) => ({ file, hide: loadHide(besideFile(path, file)) }));
  return { ...plan, hides };
}

/** An order before there are hides: those that it names are not read, and it need not name any. */
export type OrderPlan = Omit<OrderJob, 'hides'>;

/** As `loadOrderJob`, for what is reckoned before there are hides. */
export function loadOrderPlan(path: string, workshop: Workshop = DEFAULT_WORKSHOP): Promise<OrderPlan> {
  return readPlan(path, workshop, { hidesLater: true });
}

/** One set of an article by itself, before there are hides. */
export function loadArticlePlan(path: string, workshop: Workshop = DEFAULT_WORKSHOP): Promise<OrderPlan> {
  const article = parseArticle(readText(path, 'article'), { file: path });
  const order: OrderFile = {
    name: article.name,
    version: '1',
    date: '2000-01-01',
    articles: [{ file: path, sets: 1, value: 1, priority: 0, keepTogether: 'nothing' }],
    leathers: article.leathers.map((leather) => ({ ...leather, hides: [] })),
    patterns: [],
    useFrom: 'tail',
    mode: 'place all',
    cutting: { method: 'hand knife' },
    threads: [],
    hardware: [],
  };
  const written = completeOrder(order, workshop, () => article, { file: path });
  return planOf(written, path, workshop, { hidesLater: true });
}

function readPlan(path: string, workshop: Workshop, stage: OrderStage): Promise<OrderPlan> {
  return planOf(loadOrder(path, workshop), path, workshop, stage);
}

/** An order that is whole already, before there are hides or with them; files that it names lie beside `path`. */
export async function planOf(
  written: Order,
  path: string,
  workshop: Workshop,
  stage: OrderStage,
): Promise<OrderPlan> {
  const order = resolveOrder(written, workshop, stage);
  const patterns = await loadPatterns(order, path);
  const patternFindings = [...patterns.values()].flatMap((read) => read.diagnostics);
  const { pieces, diagnostics } = resolvePieces(order, (file) => patterns.get(file)!);
  // Before the search: a line that is too short for its pitch is refused now, not when it is drawn.
  const stitches = planStitches({ order, pieces });
  const findings = [...patternFindings, ...diagnostics, ...stitches.diagnostics];
  return { written, order, pieces, diagnostics: findings };
}

/** Every pattern file that the order takes pieces from, read once, in the order of the pieces. */
async function loadPatterns(order: ResolvedOrder, path: string): Promise<ReadonlyMap<string, PatternRead>> {
  const sources = order.articles.flatMap(({ pieces }) => pieces.map(({ from }) => from));
  const files = new Set(sources.flatMap((from) => (from.kind === 'pattern' ? [from.file] : [])));
  const reads = new Map<string, PatternRead>();
  for (const file of files) {
    const reading = order.patterns.find((pattern) => pattern.file === file);
    reads.set(file, await loadPattern(besideFile(path, file), reading ?? { roles: [] }));
  }
  return reads;
}

function loadOrder(path: string, workshop: Workshop): Order {
  const readArticle = (name: string): Article => {
    const file = besideFile(path, name);
    return parseArticle(readText(file, 'article'), { file });
  };
  const written = parseOrder(readText(path, 'order'), { file: path });
  return completeOrder(written, workshop, readArticle, { file: path });
}
