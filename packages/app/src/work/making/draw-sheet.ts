import { writeSvg } from '@hidebound/render';
import type { Report } from '@hidebound/render';
import type { MadeSheet, MakeWish } from '../make-tasks.js';
import { fontBook } from './fonts.js';
import { SHEET_DRAWERS } from './sheet-drawers.js';

/** A sheet's pages as pictures. Rejects with what the packages refuse. */
export async function drawSheet(wish: MakeWish): Promise<MadeSheet> {
  const drawn = await SHEET_DRAWERS[wish.sheet](wish, await fontBook());
  return {
    pages: drawn.pages.map((page) => ({
      svg: writeSvg(page),
      widthMm: page.widthMm,
      heightMm: page.heightMm,
    })),
    reports: (drawn.reports ?? []).map(withoutPictures),
    findings: drawn.findings,
    lostPhotos: drawn.lostPhotos ?? [],
    customers: drawn.customers ?? [],
    cutApart: drawn.cutApart ?? 0,
    trials: drawn.trials ?? [],
  };
}

/** In words a chart has its caption; its lines need not travel. */
function withoutPictures(report: Report): Report {
  return {
    ...report,
    blocks: report.blocks.map((block) =>
      block.kind === 'picture'
        ? { ...block, drawing: { widthMm: 0, heightMm: 0, title: block.drawing.title, layers: [] } }
        : block,
    ),
  };
}
