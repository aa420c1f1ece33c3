import { PX_PER_MM, readPbm, toMm } from './bitmap.js';
import type { Bitmap, Point } from './bitmap.js';
import { findLevelBar, findUprightBar } from './check-bars.js';
import type { CheckBar } from './check-bars.js';
import { findCross } from './crosses.js';
import { findJoinRow } from './join-row.js';
import type { JoinRow } from './join-row.js';
import { pageFigures } from './page-figures.js';
import type { PageFigures } from './page-figures.js';

export const SIDES = ['left', 'right', 'top', 'bottom'] as const;
export type Side = (typeof SIDES)[number];

/** What was found in the picture of one page; mm of the picture at its nominal resolution, y down. */
export interface PageReading {
  readonly picture: string;
  readonly figures: PageFigures;
  /** Lengths of the check bars over 100 mm. */
  readonly scale: { readonly level: number; readonly upright: number };
  readonly crosses: Corners;
  readonly rows: Readonly<Partial<Record<Side, JoinRow>>>;
  /** Sides whose row is there and makes no sense. */
  readonly unreadable: readonly Side[];
  /** Middles of the square mm of the window in which something is black. */
  readonly darkMm: readonly Point[];
}

export interface Corners {
  readonly topLeft: Point;
  readonly topRight: Point;
  readonly bottomLeft: Point;
  readonly bottomRight: Point;
}

/** Reads a picture of a page; throws, with the picture's name, where bars or crosses are not found. */
export function readPage(file: string, picture: string): PageReading {
  const bitmap = readPbm(file);
  const figures = pageFigures(bitmap.width / PX_PER_MM, bitmap.height / PX_PER_MM);
  const [level, upright] = [findLevelBar(bitmap), findUprightBar(bitmap)];
  if (level === undefined || upright === undefined) throw new Error(`${picture}: a check bar is not found.`);
  const corners = findCorners(bitmap, figures, level, upright);
  if (corners === undefined) throw new Error(`${picture}: a corner cross is not found.`);
  const { topLeft, topRight, bottomLeft, bottomRight } = corners;
  const { cellWidth, cellHeight } = figures;
  const found = {
    left: findJoinRow({ bitmap, from: topLeft, to: bottomLeft, lengthMm: cellHeight }),
    right: findJoinRow({ bitmap, from: topRight, to: bottomRight, lengthMm: cellHeight }),
    top: findJoinRow({ bitmap, from: topLeft, to: topRight, lengthMm: cellWidth }),
    bottom: findJoinRow({ bitmap, from: bottomLeft, to: bottomRight, lengthMm: cellWidth }),
  };
  return {
    picture,
    figures,
    scale: { level: level.scale, upright: upright.scale },
    crosses: {
      topLeft: toMm(topLeft),
      topRight: toMm(topRight),
      bottomLeft: toMm(bottomLeft),
      bottomRight: toMm(bottomRight),
    },
    rows: Object.fromEntries(
      SIDES.flatMap((side) => {
        const row = found[side];
        return row === undefined || row === 'unreadable' ? [] : [[side, row]];
      }),
    ),
    unreadable: SIDES.filter((side) => found[side] === 'unreadable'),
    darkMm: darkSquares(bitmap, toMm(topLeft), toMm(bottomRight), figures.halfOverlap),
  };
}

/** The crosses, looked for where they must be by the check bars that were found. */
function findCorners(
  bitmap: Bitmap,
  figures: PageFigures,
  level: CheckBar,
  upright: CheckBar,
): Corners | undefined {
  const [pxX, pxY] = [level.scale * PX_PER_MM, upright.scale * PX_PER_MM];
  const cornerAt = (x: number, y: number): Point | undefined =>
    findCross(
      bitmap,
      {
        x: level.zeroPx + (x - figures.levelBarX) * pxX,
        y: upright.zeroPx + (y - figures.uprightBarZeroY) * pxY,
      },
      pxX,
    );
  const [left, top] = [figures.cellX, figures.cellY];
  const [right, bottom] = [left + figures.cellWidth, top + figures.cellHeight];
  const [topLeft, topRight] = [cornerAt(left, top), cornerAt(right, top)];
  const [bottomLeft, bottomRight] = [cornerAt(left, bottom), cornerAt(right, bottom)];
  if (!topLeft || !topRight || !bottomLeft || !bottomRight) return undefined;
  return { topLeft, topRight, bottomLeft, bottomRight };
}

function darkSquares(bitmap: Bitmap, topLeft: Point, bottomRight: Point, beyond: number): Point[] {
  const [x0, y0] = [Math.floor(topLeft.x - beyond), Math.floor(topLeft.y - beyond)];
  const [columns, rows] = [Math.ceil(bottomRight.x + beyond) - x0, Math.ceil(bottomRight.y + beyond) - y0];
  const dark = new Uint8Array(columns * rows);
  const firstByte = Math.floor((x0 * PX_PER_MM) / 8);
  const lastByte = Math.min(bitmap.bytesPerRow - 1, Math.floor(((x0 + columns) * PX_PER_MM) / 8));
  const lastRow = Math.min(bitmap.height, Math.floor((y0 + rows) * PX_PER_MM));
  for (let y = Math.ceil(y0 * PX_PER_MM); y < lastRow; y++) {
    const row = Math.floor(y / PX_PER_MM) - y0;
    for (let byte = firstByte; byte <= lastByte; byte++) {
      if (bitmap.bits[y * bitmap.bytesPerRow + byte] === 0) continue;
      const column = Math.floor((byte * 8 + 4) / PX_PER_MM) - x0;
      if (column >= 0 && column < columns) dark[row * columns + column] = 1;
    }
  }
  const points: Point[] = [];
  dark.forEach((is, i) => {
    if (is === 1) points.push({ x: x0 + (i % columns) + 0.5, y: y0 + Math.floor(i / columns) + 0.5 });
  });
  return points;
}
