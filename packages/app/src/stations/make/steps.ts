import type { App } from '../../app/app.js';
import type { SheetName } from '../../work/make-tasks.js';
import { leavePrinting, makeReadyToPrint } from './give-out.js';
import { chooseSheet, makeTable } from './table.js';

// What someone was at goes away with each of these steps, so the focus is led to what comes in its place.

export function openSheet(app: App, sheet: SheetName): void {
  chooseSheet(app, sheet);
  focusOnceDrawn('.make-sheet h2');
}

export function closeSheet(app: App): void {
  const { sheet } = makeTable(app);
  chooseSheet(app, undefined);
  focusOnceDrawn(`.make-entry[data-sheet='${sheet}']`);
}

export async function openPrinting(app: App): Promise<void> {
  const ready = makeReadyToPrint(app);
  focusOnceDrawn('#make-print-title');
  await ready;
}

export function closePrinting(app: App): void {
  leavePrinting(app);
  focusOnceDrawn('.make-sheet h2');
}

/** The table is drawn with the next frame; what is asked for after that comes after it. */
function focusOnceDrawn(selector: string): void {
  requestAnimationFrame(() => document.querySelector<HTMLElement>(selector)?.focus());
}
