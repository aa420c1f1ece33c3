import { curveBox } from '@hidebound/geometry';
import type { LayablePiece } from '@hidebound/leather';
import type { App } from '../../../app/app.js';
import { pieceOf } from '../../../drawing/piece-layer.js';
import type { Stage } from '../../../drawing/stage.js';
import type { HeldAt } from '../../../work/hold-tasks.js';
import { placementWith, presentLayout } from '../present.js';
import type { LayTable } from '../table.js';

/** From the piece's edge to the handle's middle, and its radius, CSS pixels: a finger's width. */
const OFF_PX = 48;
const RADIUS_PX = 30;

export interface TurnHandle {
  /** Puts the handle beside the chosen piece on this hide, or takes it away. */
  update(hideId: string | undefined): void;
  remove(): void;
}

/** A handle with its word, beside the chosen piece: whoever drags it turns the piece. As large at any closeness. */
export function createTurnHandle(app: App, table: LayTable, stage: Stage): TurnHandle {
  const layer = stage.layer('hand');
  const group = layer.group().attr({ class: 'turn-handle', 'data-kind': 'turn' });
  const stem = group.line(0, 0, 0, OFF_PX - RADIUS_PX).attr({ class: 'turn-stem' });
  group
    .circle(2 * RADIUS_PX)
    .center(0, 0)
    .attr({ class: 'turn-knob' });
  const word = group.plain('').attr({ class: 'turn-word', 'text-anchor': 'middle', dy: '0.35em' });
  group.hide();

  return {
    update: (hideId) => {
      const chosen = chosenAt(app, table, hideId);
      if (chosen === undefined) {
        group.hide();
        return;
      }
      const { scale, turnDeg } = stage.view.get();
      const off = reachOf(chosen.piece) + OFF_PX / scale;
      // Above the piece as it is seen, however view and piece are turned; below it where there is no room above.
      const up = (-turnDeg * Math.PI) / 180;
      const placeAt = (side: 1 | -1) => ({
        x: chosen.at.x + Math.sin(up) * off * side,
        y: chosen.at.y - Math.cos(up) * off * side,
      });
      const { height } = stage.size.get();
      const isInView = ({ y }: { readonly y: number }): boolean => y >= RADIUS_PX && y <= height - RADIUS_PX;
      const isBelow = !isInView(stage.toScreen(placeAt(1))) && isInView(stage.toScreen(placeAt(-1)));
      const { x, y } = placeAt(isBelow ? -1 : 1);
      stem.plot(0, 0, 0, (OFF_PX - RADIUS_PX) * (isBelow ? -1 : 1));
      group.node.setAttribute('transform', `translate(${x} ${y}) rotate(${-turnDeg}) scale(${1 / scale})`);
      word.plain(app.say('lay.turn'));
      group.show();
    },
    remove: () => layer.remove(),
  };
}

function chosenAt(
  app: App,
  table: LayTable,
  hideId: string | undefined,
): { readonly at: HeldAt; readonly piece: LayablePiece } | undefined {
  const hand = table.hand.get();
  if (hand !== undefined) return hand.at.hide === hideId ? { at: hand.at, piece: hand.piece } : undefined;
  const present = presentLayout(app);
  if (present === undefined || table.run.get() !== undefined) return undefined;
  const placement = placementWith(present.layout, table.chosen.get());
  if (placement === undefined || placement.hide !== hideId) return undefined;
  if (placement.locked || placement.state !== 'planned') return undefined;
  const piece = pieceOf(present.layout, placement);
  return piece === undefined ? undefined : { at: placement, piece };
}

/** From a piece's origin, the middle of its smallest circle, to its farthest corner of the box around it, mm. */
function reachOf({ shape }: LayablePiece): number {
  const { minX, minY, maxX, maxY } = curveBox(shape.cut);
  return Math.max(Math.abs(minX), Math.abs(minY), maxX, maxY);
}
