import { cell } from '../app/cell.js';
import type { Watched } from '../app/cell.js';
import { standInLine } from './locks.js';

/** Which of several tabs on one job holds the pen: it works, the others look on. */
export interface Tabs {
  readonly penHeld: Watched<boolean>;
  /** Takes it from the tab that holds it. When this one is closed, the pen goes to one that waits. */
  takePen(): void;
  close(): void;
}

/**
 * The pen is a lock by the job's name. It is a courtesy between tabs: that nothing is overwritten is the store's
 * promise, whoever holds the pen.
 */
export function openTabs(job: string): Tabs {
  const penHeld = cell(false);
  const line = standInLine(`hidebound-pen-${job}`, {
    onHeld: () => penHeld.set(true),
    onLost: () => penHeld.set(false),
  });
  return { penHeld, takePen: () => line.take(), close: () => line.close() };
}
