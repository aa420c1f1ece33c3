import { hideAreas } from '@hidebound/leather';
import type { Hide, Workshop } from '@hidebound/leather';
import type { Drawing } from '../drawing/model.js';
import { planPage } from '../sheet/fit-page.js';
import { headerHeightMm, sheetFooter, sheetHeader } from '../sheet/header.js';
import { legendBlock } from '../sheet/legend-block.js';
import { PAGE_SIZES } from '../sheet/page-size.js';
import type { PageName } from '../sheet/page-size.js';
import { columnsOf, flowBlocks, panelStyle } from '../sheet/panel.js';
import type { PanelBlock, PanelStyle } from '../sheet/panel.js';
import { lineRow, tableRow } from '../sheet/table-row.js';
import { areaFigure, areaUnit, hideWords } from '../sheet/words.js';
import type { LengthUnit } from '../sheet/words.js';
import type { FontBook } from '../text/font-book.js';
import { meaningWords } from './hide-marks.js';
import type { HidePictures } from './hide-photo.js';
import { hideShape } from './hide-view.js';
import type { SeenFrom } from './hide-view.js';
import { layoutPicture } from './layout-picture.js';
import type { PictureContent } from './layout-picture.js';
import { PAGE_STYLE } from './picture-style.js';
import { possibleFlaws, possibleNumber } from './possible-flaws.js';

export interface HidePictureOptions {
  readonly hide: Hide;
  readonly fonts: FontBook;
  /** Default: A4. */
  readonly page?: PageName;
  /** Default: the grain side. */
  readonly side?: SeenFrom;
  readonly units?: LengthUnit;
  readonly workshop?: Workshop;
  /** Photos of the hides, drawn faint below the lines. */
  readonly pictures?: HidePictures;
}

const COLUMN_MM = 52;
const GAP_MM = 4;

/** The bare hide on one page: outline, backbone, zones and flaws with what they mean, and its areas. */
export function drawHide(options: HidePictureOptions): Drawing {
  const { hide, fonts, workshop } = options;
  const units = options.units ?? 'mm';
  const side = options.side ?? 'grain';
  const style = panelStyle(PAGE_STYLE.smallMm, COLUMN_MM);
  const plan = planPage({
    page: PAGE_SIZES[options.page ?? 'A4'],
    hide: hideShape(hide),
    side,
    headerMm: headerHeightMm(style.textMm),
    footerMm: style.textMm * 1.3,
    panelBelowMm: style.rowMm * LEAST_PANEL_ROWS,
    panelBesideMm: style.columnMm,
    gapMm: GAP_MM,
  });
  const shown = layoutPicture({
    hide,
    view: plan.view,
    style: PAGE_STYLE,
    fonts,
    units,
    within: plan.picture,
    ...(workshop === undefined ? {} : { workshop }),
    ...(options.pictures === undefined ? {} : { pictures: options.pictures }),
  });
  const blocks = [
    areaBlock(options, style),
    legendBlock(shown.content, fonts, style, PAGE_STYLE),
    flawBlock(shown.content, fonts, style),
    ...possibleBlock(hide, fonts, style),
  ];
  const columns = columnsOf(plan.panel, style);
  // One page is all there is: of a very long list of flaws the end is left out, the picture shows them all.
  const [panel] = flowBlocks(blocks, () => columns, style, fonts).pages;
  const header = {
    title: hide.id,
    titleNote: `${hideWords(hide, units)}${hide.storedAt === undefined ? '' : `, ${hide.storedAt}`}`,
    right: '',
    rightNote: '',
  };
  return {
    widthMm: plan.page.widthMm,
    heightMm: plan.page.heightMm,
    title: `Hide ${hide.id}`,
    layers: [
      ...shown.layers,
      ...(hide.candidates.length === 0
        ? []
        : [{ name: 'possible flaws', elements: possibleFlaws(hide, plan.view, fonts) }]),
      { name: 'tables', elements: panel! },
      { name: 'header', elements: sheetHeader(fonts, plan.header, style.textMm, header) },
      {
        name: 'footer',
        elements: sheetFooter(fonts, plan.footer, style.textMm, {
          side,
          denominator: plan.denominator,
          page: '',
          units,
        }),
      },
    ],
  };
}

const LEAST_PANEL_ROWS = 14;

function areaBlock(options: HidePictureOptions, style: PanelStyle): PanelBlock {
  const { hide, fonts, workshop } = options;
  const areas = hideAreas(hide, { workshop });
  const unit = areaUnit(areas.grossMm2);
  const row = (name: string, mm2: number) =>
    tableRow(fonts, style, [
      { text: name, at: 0, room: 0.45 },
      { text: `${areaFigure(mm2, unit)} ${unit}`, at: 0.7, room: 0.3, align: 'right' },
      { text: `${areaFigure(mm2, 'ft²')} ft²`, at: 1, room: 0.3, align: 'right' },
    ]);
  const { invoicedMm2 } = hide.area;
  return {
    title: 'Area',
    rows: [
      row('Gross', areas.grossMm2),
      row('Net', areas.netMm2),
      row('Usable', areas.usableMm2),
      ...(invoicedMm2 === undefined ? [] : [row('Invoiced', invoicedMm2)]),
    ],
    keepRows: 4,
  };
}

/** Flaws counted by kind and meaning. */
function flawBlock(content: PictureContent, fonts: FontBook, style: PanelStyle): PanelBlock {
  const counts = new Map<string, number>();
  for (const flaw of content.flaws) {
    const words = `${flaw.label}: ${meaningWords(flaw.meaning)}`;
    counts.set(words, (counts.get(words) ?? 0) + 1);
  }
  const rows = [...counts].map(([words, count]) => lineRow(fonts, style, `${count} × ${words}`));
  return { title: `Flaws: ${content.flaws.length}`, rows, keepRows: 2 };
}

/** So many numbers stand in one row, so that it fits its column. */
const NUMBERS_A_ROW = 4;

/** Possible flaws with the numbers that the picture shows, the surest first; what is alike shares a row. */
function possibleBlock({ candidates }: Hide, fonts: FontBook, style: PanelStyle): readonly PanelBlock[] {
  if (candidates.length === 0) return [];
  const rows = possibleRows(candidates).map((words) => lineRow(fonts, style, words));
  return [{ title: `Possible flaws: ${candidates.length}`, rows, keepRows: 2 }];
}

/** "1, 4, 6: scar, 98 of 100 sure". */
function possibleRows(candidates: Hide['candidates']): readonly string[] {
  const alike = new Map<string, string[]>();
  for (const candidate of candidates) {
    const words = `${candidate.kind ?? 'mark'}, ${Math.round(100 * candidate.confidence)} of 100 sure`;
    alike.set(words, [...(alike.get(words) ?? []), possibleNumber(candidate)]);
  }
  return [...alike].flatMap(([words, numbers]) =>
    numbers.flatMap((_, i) =>
      i % NUMBERS_A_ROW === 0 ? [`${numbers.slice(i, i + NUMBERS_A_ROW).join(', ')}: ${words}`] : [],
    ),
  );
}
