import {
  DEFAULT_WORKSHOP,
  costOfLayout,
  costOfOrder,
  leatherBudgets,
  changedHides,
} from '@hidebound/leather';
import type { CostSheet, Diagnostic, ResolvedOrder, Workshop } from '@hidebound/leather';
import { CliError } from '../cli-error.js';
import { besideFile, loadLayout, loadLayoutHides } from '../io/load-files.js';
import { isLayoutFile } from '../io/kind-of-file.js';
import { loadOrderPlan } from '../io/load-order.js';
import { loadWorkshop } from '../io/load-workshop.js';
import type { WorkshopInUse } from '../io/load-workshop.js';

/** A cost sheet with what it was made from. */
export interface CostSource {
  readonly sheet: CostSheet;
  readonly order: ResolvedOrder;
  readonly isEstimate: boolean;
  readonly inUse: WorkshopInUse | undefined;
  readonly workshop: Workshop;
  /** Every file that was read, so that none is written over. */
  readonly paths: readonly string[];
  readonly diagnostics: readonly Diagnostic[];
}

/** Reckons the costs of a layout, or of an order before there is one. */
export async function loadCosts(path: string, workshopName: string | undefined): Promise<CostSource> {
  const inUse = loadWorkshop(workshopName, path);
  const workshop = inUse?.workshop ?? DEFAULT_WORKSHOP;
  const common = { inUse, workshop };
  const own = inUse === undefined ? [path] : [path, inUse.file];
  if (!isLayoutFile(path)) {
    const { order, pieces, diagnostics } = await loadOrderPlan(path, workshop);
    const sheet = costOfOrder({
      order,
      pieces,
      workshop,
      budgets: leatherBudgets({ order, pieces, workshop }),
    });
    const errors = diagnostics.filter(({ severity }) => severity !== 'note');
    return { ...common, sheet, order, isEstimate: true, paths: own, diagnostics: errors };
  }
  const layout = loadLayout(path);
  if (layout.placements.length === 0) {
    throw new CliError(
      'nothing-laid',
      'Nothing is laid in this layout, so that it costs nothing; lay the order anew.',
      {
        file: path,
      },
    );
  }
  const named = loadLayoutHides(layout, path);
  const sheet = costOfLayout({ layout, hides: named.map(({ hide }) => hide), workshop });
  return {
    ...common,
    sheet,
    order: layout.order,
    isEstimate: false,
    paths: [...own, ...layout.hides.map(({ file }) => besideFile(path, file))],
    diagnostics: changedHides(layout, named, path),
  };
}
