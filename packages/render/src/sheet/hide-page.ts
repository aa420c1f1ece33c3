import type { Hide } from '@hidebound/leather';
import { hideShape } from '../picture/hide-view.js';
import type { SeenFrom } from '../picture/hide-view.js';
import { planPage } from './fit-page.js';
import type { PagePlan } from './fit-page.js';
import { headerHeightMm } from './header.js';
import { PAGE_SIZES } from './page-size.js';
import type { PageName } from './page-size.js';
import { blockHeightMm } from './panel.js';
import type { PanelBlock, PanelStyle } from './panel.js';

/** Between picture, panel, header and footer. */
export const GAP_MM = 4;

/** Height of a footer in letters of its size. */
export const FOOTER_SHARE = 1.3;

export interface HidePageRequest {
  readonly page: PageName;
  /** Default: the grain side. */
  readonly side: SeenFrom | undefined;
  readonly style: PanelStyle;
  /** What must find room in the panel as a whole. */
  readonly whole: readonly PanelBlock[];
  /** Rows that the panel has at least. */
  readonly leastRows: number;
  readonly pictureAt: 'middle' | 'top';
}

/** The page of a hide's picture and of what is told beside or below it. */
export function planHidePage(hide: Hide, request: HidePageRequest): PagePlan {
  const { style } = request;
  const heights = request.whole.map((block) => blockHeightMm(block, style));
  return planPage({
    page: PAGE_SIZES[request.page],
    hide: hideShape(hide),
    side: request.side ?? 'grain',
    headerMm: headerHeightMm(style.textMm),
    footerMm: style.textMm * FOOTER_SHARE,
    panelBelowMm: Math.max(...heights, style.rowMm * request.leastRows),
    panelBesideMm: style.columnMm,
    gapMm: GAP_MM,
    pictureAt: request.pictureAt,
  });
}
