import type { App } from '../../app/app.js';
import { download } from '../../shell/download.js';
import type { MadeFile } from '../../work/make-tasks.js';
import { layAwayPrint, makeTable, urlOf, wishOf } from './table.js';

/** Hands out the sheet as files, each by itself. */
export async function saveAs(app: App, as: 'pdf' | 'csv' | 'cut'): Promise<void> {
  for (const { name, bytes, type } of await filesOf(app, as)) download(name, bytes, type);
}

async function filesOf(app: App, as: 'pdf' | 'csv' | 'cut'): Promise<readonly MadeFile[]> {
  const table = makeTable(app);
  const wish = wishOf(app);
  if (wish === undefined || table.isSaving) return [];
  table.isSaving = true;
  app.redraw();
  try {
    return await table.bench.ask('save', { ...wish, as });
  } catch (error) {
    app.tellFailure(error);
    return [];
  } finally {
    table.isSaving = false;
    app.redraw();
  }
}

/** Makes the PDF that is opened to be printed, while the warning is read. */
export async function makeReadyToPrint(app: App): Promise<void> {
  const table = makeTable(app);
  layAwayPrint(table);
  table.isPrinting = true;
  app.redraw();
  const [file] = await filesOf(app, 'pdf');
  // It may have been left meanwhile.
  if (file !== undefined && table.isPrinting) table.printUrl = urlOf(file.bytes, file.type);
  else table.isPrinting = false;
  app.redraw();
}

export function leavePrinting(app: App): void {
  layAwayPrint(makeTable(app));
  app.redraw();
}
