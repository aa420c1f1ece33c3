import { composeAffine, scaling, translation } from '@hidebound/geometry';
import type { Affine, Box } from '@hidebound/geometry';
import type { PatternPagePicture } from './page-sheet.js';

/** Heights that are tried for pages in rows, the largest first: with many pages they get smaller. */
const HEIGHTS_MM = [60, 42, 30, 20, 14];
const GAP_MM = 3;

/** A page that stands in a row, by the transform that draws it there. */
export interface RowPage {
  readonly page: PatternPagePicture;
  readonly toPaper: Affine;
}

export interface PageRows {
  readonly placed: readonly RowPage[];
  readonly heightMm: number;
  /** Pages for which there was no room even at the smallest size. */
  readonly left: number;
}

/** Pages side by side in rows, as large as all of them fit into the height; the last ones are left if none does. */
export function rowsOfPages(pages: readonly PatternPagePicture[], width: number, most: number): PageRows {
  const tried = HEIGHTS_MM.map((rowMm) => placed(pages, width, most, rowMm));
  return tried.find(({ left }) => left === 0) ?? tried.at(-1)!;
}

function placed(pages: readonly PatternPagePicture[], width: number, most: number, rowMm: number): PageRows {
  const done: RowPage[] = [];
  let x = 0;
  let y = 0;
  for (const page of pages) {
    const reduced = Math.min(rowMm / page.heightMm, width / page.widthMm);
    if (x > 0 && x + page.widthMm * reduced > width) {
      x = 0;
      y += rowMm + GAP_MM;
    }
    if (y + rowMm > most) break;
    done.push({ page, toPaper: composeAffine(translation(x, y), scaling(reduced)) });
    x += page.widthMm * reduced + GAP_MM;
  }
  return { placed: done, heightMm: done.length === 0 ? 0 : y + rowMm, left: pages.length - done.length };
}

/** The transform by which a box fills a room as well as it can, in its middle, and is never enlarged. */
export function fitInto(box: Box, room: Box): Affine {
  const [width, height] = [box.maxX - box.minX, box.maxY - box.minY];
  const [roomX, roomY] = [room.maxX - room.minX, room.maxY - room.minY];
  const reduced = Math.min(1, roomX / width, roomY / height);
  const at = {
    x: room.minX + (roomX - width * reduced) / 2,
    y: room.minY + (roomY - height * reduced) / 2,
  };
  return composeAffine(
    translation(at.x, at.y),
    composeAffine(scaling(reduced), translation(-box.minX, -box.minY)),
  );
}
