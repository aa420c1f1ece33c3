import type { Box } from '@hidebound/geometry';

/** One thing on the board: a piece, or what stands for one that can't be had. mm. */
export interface Cell {
  readonly widthMm: number;
  readonly heightMm: number;
  /** How wide its words below it are. */
  readonly labelMm: number;
}

export interface CellPlace {
  /** Its middle. */
  readonly x: number;
  readonly y: number;
}

export interface BoardLayout {
  /** For each group its cells' places, and where its title stands (left end of its base line). */
  readonly groups: readonly { readonly title: CellPlace; readonly cells: readonly CellPlace[] }[];
  readonly box: Box;
}

export interface BoardOptions {
  /** Width over height of the room that there is. */
  readonly aspect: number;
  /** Height of a line of text, mm. */
  readonly textMm: number;
}

/** Widths that are tried: the best fills the room most evenly. */
const TRIES = 24;

/** Groups below each other, in each of them the cells in rows from the left, as things are laid out on a table. */
export function layOutBoard(groups: readonly (readonly Cell[])[], options: BoardOptions): BoardLayout {
  const widths = groups.flat().map(({ widthMm, labelMm }) => Math.max(widthMm, labelMm));
  const least = Math.max(options.textMm * 12, ...widths);
  const most = Math.max(
    least,
    ...groups.map((cells) =>
      cells.reduce(
        (sum, cell) => sum + Math.max(cell.widthMm, cell.labelMm) + options.textMm,
        -options.textMm,
      ),
    ),
  );
  const tries = Array.from({ length: TRIES }, (_, i) => least * (most / least) ** (i / (TRIES - 1)));
  const layouts = tries.map((width) => inRows(groups, width, options));
  const scaleOf = ({ box }: BoardLayout): number =>
    Math.min(options.aspect / (box.maxX - box.minX), 1 / (box.maxY - box.minY));
  return layouts.reduce((best, each) => (scaleOf(each) > scaleOf(best) + 1e-12 ? each : best));
}

function inRows(groups: readonly (readonly Cell[])[], width: number, { textMm }: BoardOptions): BoardLayout {
  let y = 0;
  let right = 0;
  const placed = groups.map((cells) => {
    y += 1.6 * textMm;
    const title = { x: 0, y };
    y += 0.9 * textMm;
    const places: CellPlace[] = [];
    for (const row of rowsOf(cells, width, textMm)) {
      const height = Math.max(...row.map(({ heightMm }) => heightMm));
      let x = 0;
      for (const cell of row) {
        const taken = Math.max(cell.widthMm, cell.labelMm);
        places.push({ x: x + taken / 2, y: y + height / 2 });
        x += taken + textMm;
      }
      right = Math.max(right, x - textMm);
      y += height + 2.6 * textMm;
    }
    return { title, cells: places };
  });
  return {
    groups: placed,
    box: { minX: 0, minY: 0, maxX: Math.max(right, textMm), maxY: Math.max(y, textMm) },
  };
}

function rowsOf(cells: readonly Cell[], width: number, gap: number): Cell[][] {
  const rows: Cell[][] = [];
  let used = Infinity;
  for (const cell of cells) {
    const taken = Math.max(cell.widthMm, cell.labelMm);
    if (used + gap + taken > width + 1e-9) {
      rows.push([]);
      used = -gap;
    }
    rows.at(-1)!.push(cell);
    used += gap + taken;
  }
  return rows;
}
