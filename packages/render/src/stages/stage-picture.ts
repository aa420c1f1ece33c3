import { regionBox } from '@hidebound/geometry';
import { hideRegion } from '@hidebound/leather';
import type { Hide, Layout, Workshop } from '@hidebound/leather';
import type { Drawing } from '../drawing/model.js';
import { turnHide, viewInto } from '../picture/hide-view.js';
import { layoutPicture } from '../picture/layout-picture.js';
import { PAGE_STYLE } from '../picture/picture-style.js';
import type { FontBook } from '../text/font-book.js';

/** As wide as a page's text, and no higher than leaves room for a list below it. */
const WIDTH_MM = 182;
const MOST_HEIGHT_MM = 118;
/** Labels of pieces that have no room stand around the hide. */
const AROUND_MM = 11;

export interface StagePictureOptions {
  readonly layout: Layout;
  readonly hide: Hide;
  readonly fonts: FontBook;
  readonly workshop?: Workshop;
}

/** A hide as it is now: what is cut away, what is spoiled, and the pieces that are still to be cut, with their numbers. */
export function stagePicture({ layout, hide, fonts, workshop }: StagePictureOptions): Drawing {
  const box = regionBox(hideRegion(hide));
  const [width, height] = [box.maxX - box.minX, box.maxY - box.minY];
  const isUpright = height > width;
  const [across, down] = isUpright ? [height, width] : [width, height];
  const room = { width: WIDTH_MM - 2 * AROUND_MM, height: MOST_HEIGHT_MM - 2 * AROUND_MM };
  const scale = Math.min(room.width / across, room.height / down);
  const heightMm = down * scale + 2 * AROUND_MM;
  const within = { minX: 0, minY: 0, maxX: WIDTH_MM, maxY: heightMm };
  const { layers } = layoutPicture({
    hide,
    // What the cuts leave in the end is not there yet.
    layout: { ...layout, offcuts: [], yield: { ...layout.yield, hides: [] } },
    view: viewInto(turnHide('grain', isUpright ? 90 : 0), box, scale, within),
    style: PAGE_STYLE,
    fonts,
    units: 'mm',
    within,
    ...(workshop === undefined ? {} : { workshop }),
  });
  return { widthMm: WIDTH_MM, heightMm, title: `Hide ${hide.id} as it is now`, layers };
}
