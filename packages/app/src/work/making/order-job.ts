import { readPattern } from '@hidebound/intake';
import type { PatternRead } from '@hidebound/intake';
import { leatherError, planStitches, resolvePieces } from '@hidebound/leather';
import type { Diagnostic, LayablePiece } from '@hidebound/leather';
import { patternOf, patternsOf, resolvedOrder } from '../desk/read-order.js';
import type { OrderResolved } from '../desk/read-order.js';
import type { MakeJob } from '../make-tasks.js';

/** An order with its pieces, as it is before there need be hides. */
export interface OrderJob extends OrderResolved {
  readonly pieces: readonly LayablePiece[];
  readonly diagnostics: readonly Diagnostic[];
}

export async function orderJob({ files, order: path }: MakeJob): Promise<OrderJob> {
  if (path === undefined) throw leatherError('missing-file', { file: '*.order.yaml' });
  const input = { path, files };
  const resolved = resolvedOrder(input);
  const { order } = resolved;
  const reads = new Map<string, PatternRead>();
  for (const file of patternsOf(order)) reads.set(file, await patternOf(file, order, input, readPattern));
  const { pieces, diagnostics } = resolvePieces(order, (file) => reads.get(file)!);
  const patternFindings = [...reads.values()].flatMap((read) => read.diagnostics);
  const stitches = planStitches({ order, pieces });
  return { ...resolved, pieces, diagnostics: [...patternFindings, ...diagnostics, ...stitches.diagnostics] };
}
