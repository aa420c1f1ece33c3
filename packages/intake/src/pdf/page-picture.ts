import { applyAffine, invertAffine } from '@hidebound/geometry';
import type { Affine, Point } from '@hidebound/geometry';
import type { StraightPicture } from '../photo/straight/straight-picture.js';
import { PAGE_PX_PER_MM } from './limits.js';
import type { PageFrame } from './page-frame.js';
import type { PdfPicture } from './pdfjs.js';

/** A picture with its pixels, and where the page shows it. */
export interface ShownPicture {
  readonly picture: PdfPicture;
  readonly toMm: Affine;
}

/** The pictures of a page as one, at the page's true scale: mm from its top left corner. Later ones lie over earlier ones. */
export function pagePicture(
  shown: readonly ShownPicture[],
  { widthMm, heightMm }: PageFrame,
): StraightPicture {
  const pxPerMm = Math.min(PAGE_PX_PER_MM, Math.max(...shown.map(pxPerMmOf)));
  const width = Math.max(1, Math.floor(widthMm * pxPerMm));
  const height = Math.max(1, Math.floor(heightMm * pxPerMm));
  const page = {
    width,
    height,
    rgb: new Uint8Array(width * height * 3).fill(255),
    seen: new Uint8Array(width * height),
    pxPerMm,
    origin: { x: 0, y: 0 },
  };
  for (const one of shown) paint(page, one);
  return page;
}

/** As fine as the picture is along the finer of its sides. */
export function pxPerMmOf({ picture: { width, height }, toMm: { a, b, c, d } }: ShownPicture): number {
  return Math.max(width / Math.max(1e-6, Math.hypot(a, b)), height / Math.max(1e-6, Math.hypot(c, d)));
}

function paint(page: StraightPicture, { picture, toMm }: ShownPicture): void {
  if (Math.abs(toMm.a * toMm.d - toMm.b * toMm.c) < 1e-9) return;
  const back = invertAffine(toMm);
  const { pxPerMm } = page;
  const corners = [0, 1].flatMap((x) => [0, 1].map((y) => applyAffine(toMm, { x, y })));
  const span = (values: readonly number[], size: number): [number, number] => [
    Math.max(0, Math.floor(Math.min(...values) * pxPerMm)),
    Math.min(size, Math.ceil(Math.max(...values) * pxPerMm)),
  ];
  const [left, right] = span(
    corners.map(({ x }) => x),
    page.width,
  );
  const [top, bottom] = span(
    corners.map(({ y }) => y),
    page.height,
  );
  // Where the page has fewer pixels than the picture, each is the mean of several places.
  const tries = Math.min(MOST_TRIES, Math.max(1, Math.round(pxPerMmOf({ picture, toMm }) / pxPerMm)));
  const offsets = Array.from({ length: tries }, (_, k) => (k + 0.5) / tries);
  const colour = new Float64Array(4);
  for (let y = top; y < bottom; y++) {
    for (let x = left; x < right; x++) {
      const sum = [0, 0, 0, 0];
      for (const v of offsets) {
        for (const u of offsets) {
          const at = applyAffine(back, { x: (x + u) / pxPerMm, y: (y + v) / pxPerMm });
          if (at.x < 0 || at.x > 1 || at.y < 0 || at.y > 1) continue;
          sampleAt(picture, { x: at.x * picture.width - 0.5, y: (1 - at.y) * picture.height - 0.5 }, colour);
          for (let c = 0; c < 3; c++) sum[c]! += colour[c]! * colour[3]!;
          sum[3]! += colour[3]!;
        }
      }
      const opacity = sum[3]! / (tries * tries);
      if (opacity <= 0) continue;
      const i = y * page.width + x;
      for (let c = 0; c < 3; c++) {
        const over = sum[c]! / sum[3]!;
        page.rgb[3 * i + c] = Math.round(over * opacity + page.rgb[3 * i + c]! * (1 - opacity));
      }
      if (opacity > 0.5) page.seen[i] = 255;
    }
  }
}

/** Places each way for one pixel of the page. */
const MOST_TRIES = 8;

/** Red, green, blue and opacity (0 to 1) between the four pixels around a place. */
function sampleAt(picture: PdfPicture, at: Point, into: Float64Array): void {
  const x = Math.min(Math.max(at.x, 0), picture.width - 1);
  const y = Math.min(Math.max(at.y, 0), picture.height - 1);
  const [x0, y0] = [Math.floor(x), Math.floor(y)];
  const [x1, y1] = [Math.min(x0 + 1, picture.width - 1), Math.min(y0 + 1, picture.height - 1)];
  const [fx, fy] = [x - x0, y - y0];
  into.fill(0);
  addPixel(picture, x0, y0, (1 - fx) * (1 - fy), into);
  addPixel(picture, x1, y0, fx * (1 - fy), into);
  addPixel(picture, x0, y1, (1 - fx) * fy, into);
  addPixel(picture, x1, y1, fx * fy, into);
}

/** pdf.js's numbers of pixel formats (`ImageKind`). */
const KIND = { bits: 1, colours: 2, coloursAndOpacity: 3 } as const;

function addPixel(
  { width, kind, data }: PdfPicture,
  x: number,
  y: number,
  share: number,
  into: Float64Array,
): void {
  if (share === 0) return;
  if (kind === KIND.colours || kind === KIND.coloursAndOpacity) {
    const size = kind === KIND.colours ? 3 : 4;
    const i = (y * width + x) * size;
    for (let c = 0; c < 3; c++) into[c]! += share * data[i + c]!;
    into[3]! += share * (size === 3 ? 1 : data[i + 3]! / 255);
    return;
  }
  const bit = (data[y * ((width + 7) >> 3) + (x >> 3)]! >> (7 - (x & 7))) & 1;
  const isMask = kind !== KIND.bits;
  // Masks paint their ink where the bit is 0 and leave the rest as it is.
  if (!isMask) for (let c = 0; c < 3; c++) into[c]! += share * 255 * bit;
  into[3]! += share * (isMask ? 1 - bit : 1);
}
