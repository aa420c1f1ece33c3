import type { Box } from '@hidebound/geometry';
import type { Hide, Layout, Workshop } from '@hidebound/leather';
import type { Drawing, Layer } from '../drawing/model.js';
import type { HidePictures } from '../picture/hide-photo.js';
import type { SeenFrom } from '../picture/hide-view.js';
import { layoutPicture } from '../picture/layout-picture.js';
import { LARGE_PAGE_STYLE, PAGE_STYLE } from '../picture/picture-style.js';
import type { PictureStyle } from '../picture/picture-style.js';
import type { FontBook } from '../text/font-book.js';
import { findHide } from './find-hide.js';
import type { GivenHides } from './find-hide.js';
import { pageParts } from './fit-page.js';
import type { PagePlan } from './fit-page.js';
import { headerHeightMm, hideHeader, orderHeader, sheetFooter, sheetHeader } from './header.js';
import { FOOTER_SHARE, GAP_MM, planHidePage } from './hide-page.js';
import { legendBlock } from './legend-block.js';
import { cuttingOrderBlock, piecesBlock, unplacedBlock } from './list-blocks.js';
import { hidesBlock, offcutsBlock, setBlocks } from './order-blocks.js';
import { PAGE_SIZES } from './page-size.js';
import type { PageName } from './page-size.js';
import { columnsOf, flowBlocks, panelStyle } from './panel.js';
import type { FlownPanel, PanelStyle } from './panel.js';
import { stitchBlocks } from './stitch-block.js';
import type { LengthUnit } from './words.js';
import { totalYieldBlock, yieldBlocks } from './yield-block.js';

export interface CuttingSheetOptions {
  readonly layout: Layout;
  /** The hides that the layout names, in any order. */
  readonly hides: GivenHides;
  readonly page: PageName;
  /** Default: the grain side. */
  readonly side?: SeenFrom;
  /** For lengths; areas are always given in m² or dm² and in ft². Default: mm. */
  readonly units?: LengthUnit;
  readonly fonts: FontBook;
  /** The user's own defaults for what kinds of flaws and zones mean. */
  readonly workshop?: Workshop;
  /** Photos of the hides, drawn faint below the lines. */
  readonly pictures?: HidePictures;
}

/** Columns of tables are about so wide, in letters of the text's size. */
const COLUMN_LETTERS = 22;

/**
 * The cutting sheet: one hide a page, each followed by as many pages as its tables take, then a page for the whole
 * order where there are several hides, or none because nothing was laid. Throws `unknown-hide` if the layout names a hide that is not given.
 */
export function drawCuttingSheets(options: CuttingSheetOptions): Drawing[] {
  const hides = options.layout.hides.map((entry) => findHide(options.hides, entry));
  const pages = [
    ...hides.flatMap((hide, i) => hidePages(options, hide, i, hides.length)),
    ...(hides.length === 1 ? [] : orderPages(options, hides)),
  ];
  return pages.map((page, i) => page(i + 1, pages.length));
}

type PageMaker = (number: number, count: number) => Drawing;

/** A hide's page as it is drawn, with its tables on as many pages as they take. */
interface HideSheet {
  readonly plan: PagePlan;
  readonly layers: readonly Layer[];
  readonly panels: FlownPanel['pages'];
}

function hidePages(options: CuttingSheetOptions, hide: Hide, index: number, count: number): PageMaker[] {
  const { layout, fonts } = options;
  const { style } = stylesFor(options.page);
  const units = options.units ?? 'mm';
  const side = options.side ?? 'grain';
  const { plan, layers, panels } = hideSheet(options, hide);
  const header = hideHeader(layout, hide, count > 1 ? `hide ${index + 1} of ${count}` : '', units);
  return panels.map((panel, page) => (number, of) => {
    const picturePart = page === 0 ? { side, denominator: plan.denominator } : {};
    const footer = { page: `Sheet ${number} of ${of}`, units, ...picturePart };
    return {
      widthMm: plan.page.widthMm,
      heightMm: plan.page.heightMm,
      title: `${layout.order.name}: cutting sheet, hide ${hide.id}, sheet ${number} of ${of}`,
      layers: [
        ...(page === 0 ? layers : []),
        { name: 'tables', elements: panel },
        { name: 'header', elements: sheetHeader(fonts, plan.header, style.textMm, header) },
        { name: 'footer', elements: sheetFooter(fonts, plan.footer, style.textMm, footer) },
      ],
    };
  });
}

/** The picture in the middle of its place; at the top, with tables below it, where that spares a page. */
function hideSheet(options: CuttingSheetOptions, hide: Hide): HideSheet {
  const calm = sheetWith(options, hide, planFor(options, hide, 'middle'));
  if (calm.panels.length === 1) return calm;
  const plan = planFor(options, hide, 'top');
  if (plan.spare === undefined) return calm;
  const full = sheetWith(options, hide, plan);
  return full.panels.length < calm.panels.length ? full : calm;
}

function sheetWith(options: CuttingSheetOptions, hide: Hide, plan: PagePlan): HideSheet {
  const { layout, fonts } = options;
  const { picture, style } = stylesFor(options.page);
  const { layers, content } = layoutPicture({
    hide,
    layout,
    view: plan.view,
    style: picture,
    fonts,
    units: options.units ?? 'mm',
    within: plan.picture,
    ...(options.workshop === undefined ? {} : { workshop: options.workshop }),
    ...(options.pictures === undefined ? {} : { pictures: options.pictures }),
  });
  const blocks = [
    ...yieldBlocks(layout, hide.id, fonts, style),
    legendBlock(content, fonts, style, picture),
    ...(layout.hides.length === 1 ? [unplacedBlock(layout, fonts, style)] : []),
    cuttingOrderBlock(layout, hide.id, fonts, style),
    piecesBlock(content.pieces, fonts, style),
    ...(layout.hides.length === 1 ? stitchBlocks(layout, fonts, style) : []),
  ];
  const first = [
    ...columnsOf(plan.panel, style),
    ...(plan.spare === undefined ? [] : columnsOf(plan.spare, style)),
  ];
  const further = columnsOf(furtherBody(plan), style);
  const panels = flowBlocks(blocks, (page) => (page === 0 ? first : further), style, fonts).pages;
  return { plan, layers, panels };
}

function planFor(options: CuttingSheetOptions, hide: Hide, pictureAt: 'middle' | 'top'): PagePlan {
  const { style } = stylesFor(options.page);
  return planHidePage(hide, {
    page: options.page,
    side: options.side,
    style,
    whole: yieldBlocks(options.layout, hide.id, options.fonts, style),
    leastRows: LEAST_PANEL_ROWS,
    pictureAt,
  });
}

/** The pages of the whole order: what did not fit, what each hide gives, and which pieces make up each set. */
function orderPages(options: CuttingSheetOptions, hides: readonly Hide[]): PageMaker[] {
  const { layout, fonts } = options;
  const { style } = stylesFor(options.page);
  const units = options.units ?? 'mm';
  // Upright or lying as the first hide's page.
  const [hide] = hides;
  const page = hide === undefined ? PAGE_SIZES[options.page] : planFor(options, hide, 'middle').page;
  const parts = pageParts(page, {
    headerMm: headerHeightMm(style.textMm),
    footerMm: style.textMm * FOOTER_SHARE,
    gapMm: GAP_MM,
  });
  const blocks = [
    unplacedBlock(layout, fonts, style),
    hidesBlock(layout, fonts, style),
    ...(layout.hides.length === 0 ? [] : [totalYieldBlock(layout, fonts, style)]),
    offcutsBlock(layout, units, fonts, style),
    ...(layout.placements.length === 0 ? [] : setBlocks(layout, fonts, style)),
    ...(layout.placements.length === 0 ? [] : stitchBlocks(layout, fonts, style)),
  ];
  const columns = columnsOf(parts.body, style);
  const header = orderHeader(layout);
  return flowBlocks(blocks, () => columns, style, fonts).pages.map((panel) => (number, of) => ({
    widthMm: page.widthMm,
    heightMm: page.heightMm,
    title: `${layout.order.name}: cutting sheet, whole order, sheet ${number} of ${of}`,
    layers: [
      { name: 'tables', elements: panel },
      { name: 'header', elements: sheetHeader(fonts, parts.header, style.textMm, header) },
      {
        name: 'footer',
        elements: sheetFooter(fonts, parts.footer, style.textMm, { page: `Sheet ${number} of ${of}`, units }),
      },
    ],
  }));
}

function stylesFor(page: PageName): { readonly picture: PictureStyle; readonly style: PanelStyle } {
  const picture = page === 'A4' || page === 'Letter' ? PAGE_STYLE : LARGE_PAGE_STYLE;
  return { picture, style: panelStyle(picture.smallMm, picture.smallMm * COLUMN_LETTERS) };
}

const LEAST_PANEL_ROWS = 12;

/** Where the tables stand on pages without a picture. */
function furtherBody(plan: PagePlan): Box {
  return { ...plan.sheet, minY: plan.header.maxY + GAP_MM, maxY: plan.footer.minY - GAP_MM };
}
