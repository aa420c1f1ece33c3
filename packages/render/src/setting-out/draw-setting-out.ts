import { affineDeterminant } from '@hidebound/geometry';
import { settingOut } from '@hidebound/leather';
import type { Hide, Layout, SettingOut, Workshop } from '@hidebound/leather';
import type { Drawing, DrawingElement, Layer } from '../drawing/model.js';
import type { SeenFrom } from '../picture/hide-view.js';
import { layoutPicture } from '../picture/layout-picture.js';
import type { PictureContent } from '../picture/layout-picture.js';
import { LARGE_SETTING_OUT_STYLE, SETTING_OUT_STYLE } from '../picture/picture-style.js';
import type { PictureStyle } from '../picture/picture-style.js';
import { placePieces } from '../picture/placed-pieces.js';
import { findHide } from '../sheet/find-hide.js';
import type { GivenHides } from '../sheet/find-hide.js';
import { pageParts } from '../sheet/fit-page.js';
import type { PagePlan } from '../sheet/fit-page.js';
import { hideHeader, sheetFooter, sheetHeader } from '../sheet/header.js';
import { GAP_MM, planHidePage } from '../sheet/hide-page.js';
import { legendBlock, legendRow } from '../sheet/legend-block.js';
import type { Swatch } from '../sheet/legend-block.js';
import { cuttingOrderBlock } from '../sheet/list-blocks.js';
import type { PageName } from '../sheet/page-size.js';
import { FREEING_CUT_MM, INK, MARK_LINE_MM } from '../sheet/palette.js';
import { columnsOf, flowBlocks, panelStyle } from '../sheet/panel.js';
import type { FlownPanel, PanelBlock, PanelStyle } from '../sheet/panel.js';
import type { LengthUnit } from '../sheet/words.js';
import { line } from '../drawing/build.js';
import type { FontBook } from '../text/font-book.js';
import { baseLineBlock, measuresBlock } from './base-line-block.js';
import { cardKey } from './card-key.js';
import { measureTables } from './measure-tables.js';
import { markA, markB, settingPicture } from './setting-picture.js';

export interface SettingOutOptions {
  readonly layout: Layout;
  /** The hides that the layout names, in any order. */
  readonly hides: GivenHides;
  readonly page: PageName;
  /** Default: the grain side. */
  readonly side?: SeenFrom;
  readonly fonts: FontBook;
  /** The user's own defaults for what kinds of flaws and zones mean. */
  readonly workshop?: Workshop;
}

/** Measures are in mm: half millimetres have no fraction of an inch. */
const UNITS: LengthUnit = 'mm';
const WHAT = 'Setting out';
/** Columns beside the picture and of the tables of measures, in letters of their text's size. */
const PANEL_LETTERS = 20;
const TABLE_LETTERS = 43;
/** Sizes of the tables' letters, largest first: the largest that takes no more pages than the smallest is taken. */
const TABLE_TEXT_MM: readonly number[] = [4.4, 4.2, 4, 3.8, 3.6];
const LARGE_TABLE_TEXT_MM: readonly number[] = [5.4, 5, 4.6, 4.2];
/** Tables stand in one column as wide as the page, or in two. */
const LEAST_PANEL_ROWS = 14;

/**
 * How to get a layout onto the leather with chalk, square and tape: of each hide a page with its picture, the base line
 * and the order of cutting, then the measures of every piece. Throws `unknown-hide` if the layout names a hide that is
 * not given, and `nothing-to-draw` if it lays nothing.
 */
export function drawSettingOut(options: SettingOutOptions): Drawing[] {
  const hides = options.layout.hides.map((entry) => findHide(options.hides, entry));
  const pages = hides.flatMap((hide, i) =>
    hidePages(options, hide, hides.length > 1 ? `hide ${i + 1} of ${hides.length}` : ''),
  );
  return pages.map((page, i) => page(i + 1, pages.length));
}

type PageMaker = (number: number, count: number) => Drawing;

/** Letters and columns of a page size. */
interface Styles {
  readonly picture: PictureStyle;
  readonly panel: PanelStyle;
  readonly tables: readonly PanelStyle[];
}

function stylesFor(page: PageName): Styles {
  const isLarge = page === 'A3' || page === 'Tabloid';
  const picture = isLarge ? LARGE_SETTING_OUT_STYLE : SETTING_OUT_STYLE;
  return {
    picture,
    panel: panelStyle(picture.smallMm, picture.smallMm * PANEL_LETTERS),
    tables: (isLarge ? LARGE_TABLE_TEXT_MM : TABLE_TEXT_MM).map((mm) => panelStyle(mm, mm * TABLE_LETTERS)),
  };
}

function hidePages(options: SettingOutOptions, hide: Hide, number: string): PageMaker[] {
  const { layout, fonts } = options;
  const side = options.side ?? 'grain';
  const styles = stylesFor(options.page);
  const out = settingOut(layout, hide);
  const { plan, layers, panels } = pictureSheet(options, hide, out, styles);
  const tables = tablePages(options, out, plan, styles);
  const header = hideHeader(layout, hide, number, UNITS, WHAT);
  const textMm = styles.panel.textMm;
  return [...panels, ...tables].map((panel, page) => (sheet, of) => {
    const picturePart = page === 0 ? { side, denominator: plan.denominator } : { side };
    return {
      widthMm: plan.page.widthMm,
      heightMm: plan.page.heightMm,
      title: `${layout.order.name}: setting out, hide ${hide.id}, sheet ${sheet} of ${of}`,
      layers: [
        ...(page === 0 ? layers : []),
        { name: 'tables', elements: panel },
        { name: 'header', elements: sheetHeader(fonts, plan.header, textMm, header) },
        {
          name: 'footer',
          elements: sheetFooter(fonts, plan.footer, textMm, {
            page: `Sheet ${sheet} of ${of}`,
            units: UNITS,
            ...picturePart,
          }),
        },
      ],
    };
  });
}

/** A hide's picture with what is told beside it, on as many pages as that takes. */
interface PictureSheet {
  readonly plan: PagePlan;
  readonly layers: readonly Layer[];
  readonly panels: FlownPanel['pages'];
}

/** The picture in the middle of its place; at the top, with tables below it, where that spares a page. */
function pictureSheet(options: SettingOutOptions, hide: Hide, out: SettingOut, styles: Styles): PictureSheet {
  const calm = firstPages(options, hide, out, planFor(options, hide, out, styles, 'middle'), styles);
  if (calm.panels.length === 1) return calm;
  const plan = planFor(options, hide, out, styles, 'top');
  if (plan.spare === undefined) return calm;
  const full = firstPages(options, hide, out, plan, styles);
  return full.panels.length < calm.panels.length ? full : calm;
}

function planFor(
  options: SettingOutOptions,
  hide: Hide,
  out: SettingOut,
  { panel }: Styles,
  pictureAt: 'middle' | 'top',
): PagePlan {
  const desk = { fonts: options.fonts, style: panel };
  return planHidePage(hide, {
    page: options.page,
    side: options.side,
    style: panel,
    whole: [baseLineBlock(out, desk), measuresBlock(out, options.side ?? 'grain', desk)],
    leastRows: LEAST_PANEL_ROWS,
    pictureAt,
  });
}

/** The picture, and beside it how the line and the measures are meant. */
function firstPages(
  options: SettingOutOptions,
  hide: Hide,
  out: SettingOut,
  plan: PagePlan,
  { picture, panel }: Styles,
): PictureSheet {
  const { layout, fonts } = options;
  const pieces = placePieces(layout, hide.id, plan.view);
  const { layers, content } = layoutPicture({
    hide,
    layout,
    view: plan.view,
    style: picture,
    fonts,
    units: UNITS,
    within: plan.picture,
    extra: settingPicture({ out, view: plan.view, style: picture, fonts, pieces }),
    ...(options.workshop === undefined ? {} : { workshop: options.workshop }),
  });
  const desk = { fonts, style: panel };
  const blocks = [
    baseLineBlock(out, desk),
    measuresBlock(out, options.side ?? 'grain', desk),
    cuttingOrderBlock(layout, hide.id, fonts, panel),
    signsBlock(content, fonts, panel, picture),
  ];
  const first = [
    ...columnsOf(plan.panel, panel),
    ...(plan.spare === undefined ? [] : columnsOf(plan.spare, panel)),
  ];
  const further = columnsOf(furtherBody(plan), panel);
  const panels = flowBlocks(blocks, (page) => (page === 0 ? first : further), panel, fonts).pages;
  return { plan, layers, panels };
}

/** The picture's signs, with those of setting out first. */
function signsBlock(
  content: PictureContent,
  fonts: FontBook,
  style: PanelStyle,
  picture: PictureStyle,
): PanelBlock {
  const own = (swatch: Swatch, text: string) => legendRow(fonts, style, swatch, text);
  const middle = (box: Parameters<Swatch>[0]) => ({
    x: (box.minX + box.maxX) / 2,
    y: (box.minY + box.maxY) / 2,
  });
  const legend = legendBlock(content, fonts, style, picture);
  return {
    ...legend,
    rows: [
      own((box) => {
        const { x, y } = middle(box);
        const stroke = { colour: INK, widthMm: FREEING_CUT_MM * picture.pen };
        const tick = { colour: INK, widthMm: MARK_LINE_MM * picture.pen };
        return [
          line({ x: box.minX, y }, { x: box.maxX, y }, stroke),
          ...[box.minX, x, box.maxX].map((at) => line({ x: at, y }, { x: at, y: box.minY }, tick)),
        ];
      }, 'base line'),
      own((box) => [markA(middle(box), picture)], 'A of a piece'),
      own((box) => [markB(middle(box), picture)], 'B of a piece'),
      ...legend.rows,
    ],
  };
}

/** The measures, in the largest letters that take no more pages than the smallest would. */
function tablePages(
  options: SettingOutOptions,
  out: SettingOut,
  plan: PagePlan,
  { tables, picture }: Styles,
): readonly (readonly DrawingElement[])[] {
  const tried = tables.map((style) => tablesWith(options, out, plan, style, picture));
  const fewest = Math.min(...tried.map((pages) => pages.length));
  return tried.find((pages) => pages.length === fewest)!;
}

function tablesWith(
  { layout, fonts }: SettingOutOptions,
  out: SettingOut,
  plan: PagePlan,
  style: PanelStyle,
  picture: PictureStyle,
): FlownPanel['pages'] {
  const columns = columnsOf(furtherBody(plan), style);
  const wide = { ...style, columnMm: columns[0]!.maxX - columns[0]!.minX };
  const { toDrawing } = plan.view;
  const desk = { fonts, style: wide, toDrawing, isMirrored: affineDeterminant(toDrawing) < 0 };
  const blocks = [...measureTables(out, desk), cardKey(out, layout.pieces, fonts, wide, picture)];
  if (blocks.every(({ rows }) => rows.length === 0)) return [];
  return flowBlocks(blocks, () => columns, wide, fonts).pages;
}

function furtherBody(plan: PagePlan) {
  const { headerMm, footerMm } = {
    headerMm: plan.header.maxY - plan.header.minY,
    footerMm: plan.footer.maxY - plan.footer.minY,
  };
  return pageParts(plan.page, { headerMm, footerMm, gapMm: GAP_MM }).body;
}
