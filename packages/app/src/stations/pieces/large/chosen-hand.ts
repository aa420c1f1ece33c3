import type { Point } from '@hidebound/geometry';
import type { App } from '../../../app/app.js';
import type { At, Hand, Stroke } from '../../../drawing/hand.js';
import { linePath } from '../../../drawing/path-data.js';
import type { Stage } from '../../../drawing/stage.js';
import { benchOf, choose, editOrder, orderOf, shownPattern } from '../bench.js';
import { piecesOfArticle } from '../pieces-of.js';
import { changePiece } from '../order/pieces.js';
import type { Scene } from '../open.js';
import { arrowOfPiece, arrowTip, drawArrow } from './draw-large.js';
import { arrowToward, linesOfPiece, snapTo } from './snap.js';

/** How near a finger, or the cross, has to be to take hold of something, CSS pixels. */
const REACH_PX = 26;
/** A painted line takes a point each so many pixels. */
const PAINT_STEP_PX = 4;

/** One hand for all that is done on this drawing: choosing, turning the arrow, painting what is seen, measuring. */
export function chosenHand(app: App, stage: Stage, scene: () => Scene): Hand {
  return {
    press: (at) => {
      const { large } = scene();
      const bench = benchOf(app);
      if (large === undefined || bench.chosen.kind !== 'piece' || !isOwnPiece(app)) return undefined;
      if (bench.tool === 'face') return paint(app, scene(), at);
      const tip = stage.toScreen(arrowTip(arrowOfPiece(large), large.arrowDeg));
      const isNear = Math.hypot(tip.x - at.screen.x, tip.y - at.screen.y) <= REACH_PX;
      return isNear ? turnArrow(app, scene()) : undefined;
    },
    tap: (at) => {
      const { chosen, tool } = benchOf(app);
      if (chosen.kind === 'all') return chooseAt(app, at);
      if (chosen.kind === 'patterns')
        return tool === 'measure' ? measure(app, stage, scene(), at) : toggle(app, at);
      return false;
    },
    describe: (at) => describe(app, at),
  };
}

/** Pieces of an article file are not changed here. */
export function isOwnPiece(app: App): boolean {
  const { chosen } = benchOf(app);
  const article = chosen.kind === 'piece' ? orderOf(app)?.articles[chosen.article] : undefined;
  return article !== undefined && !('file' in article);
}

function idAt({ target }: At, kind: string): string | undefined {
  return target?.closest(`[data-kind="${kind}"]`)?.getAttribute('data-id') ?? undefined;
}

function chooseAt(app: App, at: At): boolean {
  const [article, piece] = (idAt(at, 'piece') ?? '').split('/').map(Number);
  if (article === undefined || piece === undefined) return false;
  choose(app, { kind: 'piece', article, piece });
  return true;
}

function toggle(app: App, at: At): boolean {
  const id = idAt(at, 'pattern');
  if (id === undefined) return false;
  const { left } = benchOf(app);
  if (!left.delete(id)) left.add(id);
  app.redraw();
  return true;
}

function describe(app: App, at: At): string | undefined {
  const [article, piece] = (idAt(at, 'piece') ?? '').split('/').map(Number);
  if (article !== undefined && piece !== undefined) return piecesOfArticle(app, article)[piece]?.name;
  return idAt(at, 'pattern')?.replace(/^.*#/, '');
}

function turnArrow(app: App, { layer, large }: Scene): Stroke {
  const piece = large!;
  const { middle } = arrowOfPiece(piece);
  const arrow = layer.findOne('.large-arrow') as Parameters<typeof drawArrow>[0] | null;
  const show = (deg: number): void => {
    if (arrow !== null) drawArrow(arrow, piece, deg);
  };
  return {
    move: ({ place, shift }) => show(arrowToward(middle, place, shift)),
    end: ({ place, shift }) => setArrow(app, arrowToward(middle, place, shift)),
    cancel: () => show(piece.arrowDeg),
  };
}

/** From the frame that is drawn to that of the pattern: what is seen from the flesh side is drawn mirrored. */
export function setArrow(app: App, shownDeg: number | undefined): void {
  const { chosen, board } = benchOf(app);
  if (chosen.kind !== 'piece') return;
  const { article, piece } = chosen;
  const isFlesh = board?.articles[article]?.pieces[piece]?.resolved?.side === 'flesh';
  const deg = shownDeg === undefined ? undefined : isFlesh ? 180 - shownDeg : shownDeg;
  const arrowDeg = deg === undefined ? undefined : Math.round((((deg % 360) + 360) % 360) * 10) / 10;
  editOrder(app, app.say('pieces.arrowLabel'), (order) => changePiece(order, article, piece, { arrowDeg }));
}

function paint(app: App, { layer }: Scene, start: At): Stroke {
  const bench = benchOf(app);
  const points: Point[] = [start.place];
  let last = start.screen;
  const line = layer.path('').attr({ class: 'paint-line' });
  return {
    move: ({ place, screen }) => {
      if (Math.hypot(screen.x - last.x, screen.y - last.y) < PAINT_STEP_PX) return;
      last = screen;
      points.push(place);
      line.plot(linePath(points));
    },
    end: ({ place }) => {
      line.remove();
      points.push(place);
      if (points.length > 3) bench.rings = [...bench.rings, points];
      app.redraw();
    },
    cancel: () => line.remove(),
  };
}

function measure(app: App, stage: Stage, { files }: Scene, at: At): boolean {
  const bench = benchOf(app);
  const file = files.find(
    ({ box }) =>
      at.place.x >= box.minX - 10 &&
      at.place.x <= box.maxX + 10 &&
      at.place.y >= box.minY - 10 &&
      at.place.y <= box.maxY + 10,
  );
  const read = file === undefined ? undefined : shownPattern(app, file.path)?.read;
  if (file === undefined || read === undefined) return false;
  const own = { x: at.place.x - file.shift.x, y: at.place.y - file.shift.y };
  const curves = [
    ...read.pieces.flatMap(({ piece }) => linesOfPiece(piece)),
    ...read.strays.map(({ curve }) => curve),
  ];
  const snapped = snapTo(curves, own, (0.6 * REACH_PX) / stage.view.get().scale);
  const { measured } = bench;
  if (measured?.path === file.path && measured.to === undefined) {
    bench.measured = { ...measured, to: snapped?.kind === 'corner' ? snapped.at : own };
  } else if (snapped?.kind === 'side') {
    bench.measured = { path: file.path, from: snapped.from, to: snapped.to };
  } else bench.measured = { path: file.path, from: snapped?.at ?? own };
  app.redraw();
  return true;
}
