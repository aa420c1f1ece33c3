import { ringBox, transformRegion } from '@hidebound/geometry';
import type { Affine, Box, Region } from '@hidebound/geometry';
import { turnHide, viewInto } from '../picture/hide-view.js';
import type { HideView, SeenFrom } from '../picture/hide-view.js';
import { lyingPage } from './page-size.js';
import type { PageSize } from './page-size.js';

/** Kept clear on every side: no printer loses it, and a pin finds room. */
export const PAGE_MARGIN_MM = 11;

/** Room around the hide for labels at leaders. */
const LABEL_BAND_MM = 7;

/** A reduced scale is 1 : a multiple of this. */
const DENOMINATOR_STEP = 0.25;

/** How a page is divided. */
export interface PagePlan {
  readonly page: PageSize;
  /** Within the margins. */
  readonly sheet: Box;
  readonly header: Box;
  /** The hide with the band for its labels. */
  readonly picture: Box;
  /** The tables, below or beside the picture. */
  readonly panel: Box;
  /** Room below the picture for more tables, where they stand beside it and the picture was set to the top. */
  readonly spare?: Box;
  readonly footer: Box;
  readonly view: HideView;
  /** Reduced so many times. */
  readonly denominator: number;
}

export interface PlanRequest {
  readonly page: PageSize;
  readonly hide: Region;
  readonly side: SeenFrom;
  readonly headerMm: number;
  readonly footerMm: number;
  /** Height that the tables want where they stand side by side below the picture. */
  readonly panelBelowMm: number;
  /** Width that they want beside it. */
  readonly panelBesideMm: number;
  readonly gapMm: number;
  /** Default: the middle of its place. At the top, what is free below it is for tables. */
  readonly pictureAt?: 'middle' | 'top';
}

/** Less room below a picture is no use for tables. */
const LEAST_SPARE_MM = 24;

/**
 * Page upright or lying, hide turned or not, tables below or beside: whatever shows the hide largest. Where two come
 * out alike, the first of: not turned, lying, below.
 */
export function planPage(request: PlanRequest): PagePlan {
  let best: PagePlan | undefined;
  for (const turnDeg of [0, 90] as const) {
    const turned = turnHide(request.side, turnDeg);
    for (const page of [lyingPage(request.page), request.page]) {
      for (const panelAt of ['below', 'beside'] as const) {
        const plan = divide(request, page, panelAt, turned);
        if (best === undefined || plan.denominator < best.denominator) best = plan;
      }
    }
  }
  return best!;
}

/** A page without a picture: what is within its margins, from the top downwards. */
export interface PageParts {
  readonly sheet: Box;
  readonly header: Box;
  readonly body: Box;
  readonly footer: Box;
}

/** Divides a page into header, body and footer. */
export function pageParts(
  page: PageSize,
  sizes: { readonly headerMm: number; readonly footerMm: number; readonly gapMm: number },
): PageParts {
  const { headerMm, footerMm, gapMm } = sizes;
  const sheet = {
    minX: PAGE_MARGIN_MM,
    minY: PAGE_MARGIN_MM,
    maxX: page.widthMm - PAGE_MARGIN_MM,
    maxY: page.heightMm - PAGE_MARGIN_MM,
  };
  const header = { ...sheet, maxY: sheet.minY + headerMm };
  const footer = { ...sheet, minY: sheet.maxY - footerMm };
  const body = { ...sheet, minY: header.maxY + gapMm, maxY: footer.minY - gapMm };
  return { sheet, header, body, footer };
}

function divide(request: PlanRequest, page: PageSize, panelAt: 'below' | 'beside', turned: Affine): PagePlan {
  const { gapMm } = request;
  const { sheet, header, body, footer } = pageParts(page, request);
  const hideBox = ringBox(request.hide.outer);
  const own = ringBox(transformRegion(turned, request.hide).outer);
  const below = panelAt === 'below';
  const room = {
    x: body.maxX - body.minX - (below ? 0 : request.panelBesideMm + gapMm),
    y: body.maxY - body.minY - (below ? request.panelBelowMm + gapMm : 0),
  };
  const exact = Math.max(
    (own.maxX - own.minX) / Math.max(room.x - 2 * LABEL_BAND_MM, 1),
    (own.maxY - own.minY) / Math.max(room.y - 2 * LABEL_BAND_MM, 1),
  );
  const denominator = Math.max(1, Math.ceil(exact / DENOMINATOR_STEP) * DENOMINATOR_STEP);
  const wanted = {
    x: (own.maxX - own.minX) / denominator + 2 * LABEL_BAND_MM,
    y: (own.maxY - own.minY) / denominator + 2 * LABEL_BAND_MM,
  };
  const isAtTop = !below && request.pictureAt === 'top' && room.y - wanted.y - gapMm >= LEAST_SPARE_MM;
  const picture = {
    ...body,
    ...(below || isAtTop ? { maxY: body.minY + Math.min(wanted.y, room.y) } : {}),
    ...(below ? {} : { maxX: body.minX + room.x }),
  };
  const panel = below ? { ...body, minY: picture.maxY + gapMm } : { ...body, minX: picture.maxX + gapMm };
  return {
    page,
    sheet,
    header,
    footer,
    picture,
    panel,
    denominator,
    ...(isAtTop ? { spare: { ...body, minY: picture.maxY + gapMm, maxX: picture.maxX } } : {}),
    view: viewInto(turned, hideBox, 1 / denominator, picture),
  };
}
