import { writePdf } from '@hidebound/render';
import type { MadeFile, MakeTasks } from '../make-tasks.js';
import { fontBook } from './fonts.js';
import { fileStem } from './layout-sheets.js';
import { SHEET_DRAWERS } from './sheet-drawers.js';

/** A sheet as files to be kept: all pages as one PDF, or what is no page. */
export async function saveSheet({ as, ...wish }: MakeTasks['save']['input']): Promise<readonly MadeFile[]> {
  const fonts = await fontBook();
  const drawn = await SHEET_DRAWERS[wish.sheet](wish, fonts);
  if (as !== 'pdf') return drawn.files?.() ?? [];
  const bytes = await writePdf(drawn.pages, { fonts, title: drawn.title });
  return [{ name: `${fileStem(drawn.title)}.pdf`, type: 'application/pdf', bytes }];
}
