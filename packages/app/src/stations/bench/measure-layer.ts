import type { G } from '@svgdotjs/svg.js';
import { applyAffine } from '@hidebound/geometry';
import type { Point } from '@hidebound/geometry';
import { placementTransform } from '@hidebound/leather';
import type { BaseLine, ChalkMark, Layout, PiecePlacement } from '@hidebound/leather';
import type { App } from '../../app/app.js';
import { ofScreenSize } from '../../drawing/hatch.js';
import { linePath } from '../../drawing/path-data.js';
import { pieceOf } from '../../drawing/piece-layer.js';
import type { BenchNow } from './bench-now.js';
import { drawFoundFlaw } from './found-flaw.js';
import { letterOf } from './logic/letters.js';
import { settingOf } from './logic/measures-of.js';
import type { ItemSetting } from './logic/measures-of.js';
import { benchTable } from './table.js';

/** The base line, the marks of what is in front with the ways to them, and the flaw that is being marked. */
export function drawMeasuresInto(layer: G, app: App, now: BenchNow | undefined): void {
  layer.clear();
  layer.attr({ class: 'bench-measures' });
  const { setOut, flaw } = benchTable(app);
  const item = now?.item;
  if (now !== undefined && item?.kind === 'piece') drawArrowHead(layer, now.layout, item.placement);
  const known = setOut.get();
  if (item !== undefined && known?.out?.hide === item.hide) {
    const setting = settingOf(known.out, item);
    drawBaseLine(layer, known.out.baseLine);
    if (setting !== undefined) drawSetting(layer, known.out.baseLine, setting);
  }
  const found = flaw.get();
  if (found !== undefined) drawFoundFlaw(layer, found);
}

const HEAD = 'M-16 -9L0 0L-16 9';

/** The direction arrow of the piece in front gets a head that is seen at any size. */
function drawArrowHead(layer: G, layout: Layout, placement: PiecePlacement): void {
  const direction = pieceOf(layout, placement)?.shape.direction;
  if (direction === undefined) return;
  const map = placementTransform(placement);
  const [from, to] = [applyAffine(map, direction.from), applyAffine(map, direction.to)];
  const head = layer.path(HEAD).attr({ class: 'bench-arrow' });
  ofScreenSize(head, to.x, to.y, (Math.atan2(to.y - from.y, to.x - from.x) * 180) / Math.PI);
}

function drawBaseLine(layer: G, { start, end }: BaseLine): void {
  layer.path(linePath([start.at, end.at])).attr({ class: 'bench-line' });
  drawMark(layer, start.at, 'S');
  drawMark(layer, end.at, 'E');
}

function drawSetting(layer: G, line: BaseLine, setting: ItemSetting): void {
  switch (setting.kind) {
    case 'piece': {
      const { piece, inBlock } = setting;
      const marks = [piece.a, ...(piece.b === undefined ? [] : [piece.b])];
      if (inBlock === undefined) for (const mark of marks) drawWay(layer, line, mark);
      else drawSide(layer, inBlock.corners, inBlock.baseSide);
      marks.forEach((mark, i) => drawMark(layer, mark.at, i === 0 ? 'A' : 'B'));
      return;
    }
    case 'strap':
    case 'lane': {
      const { p, q } = setting.lane;
      layer.path(linePath([p.at, q.at])).attr({ class: 'bench-line is-first-cut' });
      for (const [letter, mark] of [
        ['P', p],
        ['Q', q],
      ] as const) {
        if (setting.kind === 'lane') drawWay(layer, line, mark);
        drawMark(layer, mark.at, letter);
      }
      return;
    }
    case 'rough cut': {
      const { corners } = setting.roughCut;
      const outline = corners.map(({ at }) => at);
      layer.path(`${linePath(outline)}Z`).attr({ class: 'bench-line is-first-cut' });
      corners.forEach(({ at }, i) => drawMark(layer, at, letterOf(i)));
    }
  }
}

function drawSide(layer: G, corners: readonly ChalkMark[], [from, to]: readonly [number, number]): void {
  const [a, b] = [corners[from], corners[to]];
  if (a === undefined || b === undefined) return;
  layer.path(linePath([a.at, b.at])).attr({ class: 'bench-line is-first-cut' });
  drawMark(layer, a.at, letterOf(from));
  drawMark(layer, b.at, letterOf(to));
}

/** From the line at a right angle out to the mark. */
function drawWay(layer: G, { frame: { origin, axis } }: BaseLine, { at }: ChalkMark): void {
  const along = (at.x - origin.x) * axis.x + (at.y - origin.y) * axis.y;
  const foot: Point = { x: origin.x + axis.x * along, y: origin.y + axis.y * along };
  layer.path(linePath([foot, at])).attr({ class: 'bench-way' });
}

function drawMark(layer: G, at: Point, letter: string): void {
  layer.path(`${linePath([at])}h0`).attr({ class: 'bench-mark' });
  const word = layer.group().attr({ class: 'hide-word bench-letter' });
  word.plain(letter).attr({ x: 9, y: -7 });
  ofScreenSize(word, at.x, at.y);
}
