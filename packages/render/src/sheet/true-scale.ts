import { regionBox, transformRegion } from '@hidebound/geometry';
import type { Hide, Layout, Workshop } from '@hidebound/leather';
import type { Drawing } from '../drawing/model.js';
import type { HidePictures } from '../picture/hide-photo.js';
import { hideShape, turnHide, viewInto } from '../picture/hide-view.js';
import type { SeenFrom } from '../picture/hide-view.js';
import { layoutPicture } from '../picture/layout-picture.js';
import { TRUE_SCALE_STYLE } from '../picture/picture-style.js';
import type { FontBook } from '../text/font-book.js';
import type { LengthUnit } from './words.js';

export interface TrueScaleOptions {
  readonly layout: Layout;
  readonly hide: Hide;
  readonly fonts: FontBook;
  /** Default: the grain side. */
  readonly side?: SeenFrom;
  readonly units?: LengthUnit;
  readonly workshop?: Workshop;
  /** Photos of the hides, drawn faint below the lines. */
  readonly pictures?: HidePictures;
}

/** Room around the hide for labels that find none on it. */
const MARGIN_MM = 60;

/** The layout of one hide at true scale: 1 mm of the drawing is 1 mm of leather. */
export function drawLayoutTrueScale(options: TrueScaleOptions): Drawing {
  const { layout, hide } = options;
  const side = options.side ?? 'grain';
  const turned = turnHide(side, 0);
  const shape = hideShape(hide);
  const own = regionBox(transformRegion(turned, shape));
  const page = {
    minX: 0,
    minY: 0,
    maxX: Math.ceil(own.maxX - own.minX) + 2 * MARGIN_MM,
    maxY: Math.ceil(own.maxY - own.minY) + 2 * MARGIN_MM,
  };
  const { layers } = layoutPicture({
    hide,
    layout,
    view: viewInto(turned, regionBox(shape), 1, page),
    style: TRUE_SCALE_STYLE,
    fonts: options.fonts,
    units: options.units ?? 'mm',
    within: page,
    ...(options.workshop === undefined ? {} : { workshop: options.workshop }),
    ...(options.pictures === undefined ? {} : { pictures: options.pictures }),
  });
  return {
    widthMm: page.maxX,
    heightMm: page.maxY,
    title: `${layout.order.name}: hide ${hide.id} at true scale, seen from the ${side} side`,
    layers,
  };
}
