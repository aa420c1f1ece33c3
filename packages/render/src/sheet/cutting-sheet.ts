import type { Box } from '@hidebound/geometry';
import type { Hide, Layout, LayoutHide, Workshop } from '@hidebound/leather';
import type { Drawing } from '../drawing/model.js';
import { RenderError } from '../error.js';
import { hideShape } from '../picture/hide-view.js';
import type { SeenFrom } from '../picture/hide-view.js';
import { layoutPicture } from '../picture/layout-picture.js';
import type { PictureContent } from '../picture/layout-picture.js';
import { LARGE_PAGE_STYLE, PAGE_STYLE } from '../picture/picture-style.js';
import type { FontBook } from '../text/font-book.js';
import { planPage } from './fit-page.js';
import type { PagePlan } from './fit-page.js';
import { headerHeightMm, hideHeader, sheetFooter, sheetHeader } from './header.js';
import { legendBlock } from './legend-block.js';
import { cuttingOrderBlock, piecesBlock, unplacedBlock } from './list-blocks.js';
import { PAGE_SIZES } from './page-size.js';
import type { PageName } from './page-size.js';
import { blockHeightMm, columnsOf, flowBlocks, panelStyle } from './panel.js';
import type { PanelBlock, PanelStyle } from './panel.js';
import type { LengthUnit } from './words.js';
import { totalYieldBlock, yieldBlocks } from './yield-block.js';

export interface CuttingSheetOptions {
  readonly layout: Layout;
  /** The hides that the layout names, in any order. */
  readonly hides: ReadonlyMap<string, Hide> | readonly Hide[];
  readonly page: PageName;
  /** Default: the grain side. */
  readonly side?: SeenFrom;
  /** For lengths; areas are always given in m² or dm² and in ft². Default: mm. */
  readonly units?: LengthUnit;
  readonly fonts: FontBook;
  /** The user's own defaults for what kinds of flaws and zones mean. */
  readonly workshop?: Workshop;
}

/** Columns of tables are about so wide, in letters of the text's size. */
const COLUMN_LETTERS = 22;
const GAP_MM = 4;

/**
 * The cutting sheet: one hide a page, each followed by as many pages as its tables take, then a page for the whole
 * order where there are several hides. Throws `unknown-hide` if the layout names a hide that is not given.
 */
export function drawCuttingSheets(options: CuttingSheetOptions): Drawing[] {
  const hides = options.layout.hides.map((entry) => findHide(options.hides, entry));
  const pages = hides.flatMap((hide, i) => hidePages(options, hide, i, hides.length));
  return pages.map((page, i) => page(i + 1, pages.length));
}

type PageMaker = (number: number, count: number) => Drawing;

function findHide(hides: CuttingSheetOptions['hides'], entry: LayoutHide): Hide {
  const hide = Array.isArray(hides)
    ? (hides as readonly Hide[]).find((each) => each.id === entry.id)
    : (hides as ReadonlyMap<string, Hide>).get(entry.id);
  if (hide === undefined) {
    throw new RenderError('unknown-hide', `The layout lays pieces on hide ${entry.id}, which was not given.`);
  }
  return hide;
}

function hidePages(options: CuttingSheetOptions, hide: Hide, index: number, count: number): PageMaker[] {
  const { layout, fonts } = options;
  const picture = options.page === 'A4' || options.page === 'Letter' ? PAGE_STYLE : LARGE_PAGE_STYLE;
  const style = panelStyle(picture.smallMm, picture.smallMm * COLUMN_LETTERS);
  const units = options.units ?? 'mm';
  const side = options.side ?? 'grain';
  const yields = yieldBlocks(layout, hide.id, fonts, style);
  const plan = planFor(options, hide, yields, style);
  const shown = layoutPicture({
    hide,
    layout,
    view: plan.view,
    style: picture,
    fonts,
    units,
    within: plan.picture,
    ...(options.workshop === undefined ? {} : { workshop: options.workshop }),
  });
  const blocks = [
    ...yields,
    legendBlock(shown.content, fonts, style, picture),
    ...listBlocks(options, hide, shown.content, style, { index, count }),
  ];
  const columns = columnsOf(plan.panel, style);
  const further = columnsOf(furtherBody(plan), style);
  const panels = flowBlocks(blocks, { columns }, { columns: further }, style, fonts).pages;
  const header = hideHeader(layout, hide, count > 1 ? `hide ${index + 1} of ${count}` : '', units);
  return panels.map((panel, page) => (number, of) => {
    const picturePart = page === 0 ? { side, denominator: plan.denominator } : {};
    const footer = { page: `Sheet ${number} of ${of}`, units, ...picturePart };
    return {
      widthMm: plan.page.widthMm,
      heightMm: plan.page.heightMm,
      title: `${layout.order.name}: cutting sheet, hide ${hide.id}, sheet ${number} of ${of}`,
      layers: [
        ...(page === 0 ? shown.layers : []),
        { name: 'tables', elements: panel },
        { name: 'header', elements: sheetHeader(fonts, plan.header, style.textMm, header) },
        { name: 'footer', elements: sheetFooter(fonts, plan.footer, style.textMm, footer) },
      ],
    };
  });
}

function planFor(
  options: CuttingSheetOptions,
  hide: Hide,
  yields: readonly PanelBlock[],
  style: PanelStyle,
): PagePlan {
  const heights = yields.map((block) => blockHeightMm(block, style));
  return planPage({
    page: PAGE_SIZES[options.page],
    hide: hideShape(hide),
    side: options.side ?? 'grain',
    headerMm: headerHeightMm(style.textMm),
    footerMm: style.textMm * 1.3,
    panelBelowMm: Math.max(...heights, style.rowMm * LEAST_PANEL_ROWS),
    panelBesideMm: style.columnMm,
    gapMm: GAP_MM,
  });
}

/** What did not fit stands with the last hide: only then is it known for the whole order. */
function listBlocks(
  options: CuttingSheetOptions,
  hide: Hide,
  content: PictureContent,
  style: PanelStyle,
  place: { readonly index: number; readonly count: number },
): PanelBlock[] {
  const { layout, fonts } = options;
  const isLast = place.index === place.count - 1;
  return [
    ...(isLast ? [unplacedBlock(layout, fonts, style)] : []),
    cuttingOrderBlock(layout, hide.id, fonts, style),
    piecesBlock(content.pieces, fonts, style),
    ...(isLast && place.count > 1 ? [totalYieldBlock(layout, fonts, style)] : []),
  ];
}

const LEAST_PANEL_ROWS = 12;

/** Where the tables stand on pages without a picture. */
function furtherBody(plan: PagePlan): Box {
  return { ...plan.sheet, minY: plan.header.maxY + GAP_MM, maxY: plan.footer.minY - GAP_MM };
}
