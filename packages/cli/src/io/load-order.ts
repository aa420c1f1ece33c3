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
  ResolvedOrder,
  Workshop,
} from '@hidebound/leather';
import { besideFile, loadHide, readText } from './load-files.js';
import { loadPattern } from './load-pattern.js';

/** An order with all that it names: its articles, its pieces, its hides. */
export interface OrderJob {
  readonly order: ResolvedOrder;
  readonly pieces: readonly LayablePiece[];
  readonly hides: readonly NamedHide[];
  readonly diagnostics: readonly Diagnostic[];
}

/** Reads an order; files that it names lie beside it. What it leaves open, the workshop says. */
export function loadOrderJob(path: string, workshop: Workshop = DEFAULT_WORKSHOP): OrderJob {
  const order = resolveOrder(loadOrder(path, workshop), workshop);
  const patternFindings: Diagnostic[] = [];
  const { pieces, diagnostics } = resolvePieces(order, (file) => {
    const reading = order.patterns.find((pattern) => pattern.file === file);
    const result = loadPattern(besideFile(path, file), reading ?? { roles: [] });
    patternFindings.push(...result.diagnostics);
    return result;
  });
  // Before the search: a line that is too short for its pitch is refused now, not when it is drawn.
  const stitches = planStitches({ order, pieces });
  const files = new Set(order.leathers.flatMap(({ hides }) => hides));
  const hides = [...files].map((file) => ({ file, hide: loadHide(besideFile(path, file)) }));
  return { order, pieces, hides, diagnostics: [...patternFindings, ...diagnostics, ...stitches.diagnostics] };
}

function loadOrder(path: string, workshop: Workshop): Order {
  const readArticle = (name: string): Article => {
    const file = besideFile(path, name);
    return parseArticle(readText(file, 'article'), { file });
  };
  const written = parseOrder(readText(path, 'order'), { file: path });
  return completeOrder(written, workshop, readArticle, { file: path });
}
