import type { PieceCopy } from '@hidebound/leather';
import type { App } from '../../../app/app.js';
import { copyKey } from '../../../drawing/piece-layer.js';
import { placeUnder } from '../middle.js';
import type { LayTable } from '../table.js';
import { letGo, moveHand, putBack, takeFromTray } from './in-hand.js';

/** A press that moves less than this is no drag, CSS pixels. */
const DRAG_FROM_PX = 10;

/** Drags a piece that lies nowhere from its row onto the hide; a mere press stays a press of the row's button. */
export function dragFromList(
  app: App,
  table: LayTable,
  copy: PieceCopy,
  hide: string,
  start: PointerEvent,
): void {
  const button = start.currentTarget as HTMLElement;
  const { pointerId } = start;
  const end = new AbortController();
  const { signal } = end;
  let isDrag = false;
  const isOurs = (): boolean => {
    const hand = table.hand.get();
    return hand !== undefined && copyKey(hand.copy) === copyKey(copy);
  };
  const follow = (event: PointerEvent): void => {
    const far = Math.hypot(event.clientX - start.clientX, event.clientY - start.clientY);
    isDrag ||= far > DRAG_FROM_PX;
    const place = isDrag ? placeUnder(app, event) : undefined;
    if (place === undefined) return;
    const hand = table.hand.get();
    if (hand === undefined) takeFromTray(app, table, copy, { hide, ...place, rotationDeg: 0 }, 'moving');
    else if (isOurs()) moveHand(app, table, { ...hand.at, ...place });
  };
  const letGoThere = (event: PointerEvent): void => {
    end.abort();
    if (!isDrag) return;
    // The press ends on the button that it began on, which would count as one.
    swallowClick(button);
    if (!isOurs()) return;
    if (placeUnder(app, event) === undefined) putBack(app, table);
    else void letGo(app, table);
  };
  button.setPointerCapture(pointerId);
  button.addEventListener('pointermove', follow, { signal });
  button.addEventListener('pointerup', letGoThere, { signal });
  button.addEventListener(
    'pointercancel',
    () => {
      end.abort();
      if (isOurs()) putBack(app, table);
    },
    { signal },
  );
}

function swallowClick(button: HTMLElement): void {
  const swallow = (click: Event): void => click.stopImmediatePropagation();
  button.addEventListener('click', swallow, { capture: true });
  setTimeout(() => button.removeEventListener('click', swallow, { capture: true }));
}
