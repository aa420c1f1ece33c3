import type { Point } from '@hidebound/geometry';
import type { At, Stroke } from './hand.js';
import { firstOf } from './pointers.js';
import type { Stage } from './stage.js';
import { shifted, zoomedAt } from './view.js';

/** How far an arrow key moves the cross, CSS pixels: plain, with Shift, with Alt. */
const STEP_PX = { plain: 10, shift: 60, alt: 1 } as const;
const ZOOM = 1.25;
const TURN_DEG = 15;
/** The view follows the cross when it comes nearer to the edge than this. */
const EDGE_PX = 40;

const ARROWS: Readonly<Record<string, Point>> = {
  ArrowLeft: { x: -1, y: 0 },
  ArrowRight: { x: 1, y: 0 },
  ArrowUp: { x: 0, y: -1 },
  ArrowDown: { x: 0, y: 1 },
};

/**
 * A cross that the keys move does all that a pointer can: Enter taps, Space takes hold and lets go, the arrows draw or
 * drag in between. So every tool of every place works without a pointer.
 */
export function listenToKeys(stage: Stage, root: HTMLElement, cross: HTMLElement): () => void {
  const end = new AbortController();
  const { signal } = end;
  let screen: Point | undefined;
  let stroke: Stroke | undefined;

  const show = (): void => {
    cross.hidden = screen === undefined;
    if (screen !== undefined) cross.style.transform = `translate(${screen.x}px, ${screen.y}px)`;
    cross.classList.toggle('holds', stroke !== undefined);
  };
  const here = (): Point => {
    const { width, height } = stage.size.get();
    return (screen ??= { x: width / 2, y: height / 2 });
  };
  const at = (event: KeyboardEvent): At => {
    const point = here();
    const { left, top } = root.getBoundingClientRect();
    const target = document.elementFromPoint(left + point.x, top + point.y) ?? undefined;
    return { place: stage.toPlace(point), screen: point, by: 'keys', shift: event.shiftKey, target };
  };
  const tell = (where: At): void => {
    const words = firstOf(stage.hands(), (hand) => hand.describe?.(where));
    if (words !== undefined) stage.say(words);
  };

  const moveCross = (event: KeyboardEvent, by: Point): void => {
    const step = event.altKey ? STEP_PX.alt : event.shiftKey ? STEP_PX.shift : STEP_PX.plain;
    const from = here();
    const { width, height } = stage.size.get();
    const wanted = { x: from.x + by.x * step, y: from.y + by.y * step };
    screen = { x: clamp(wanted.x, EDGE_PX, width - EDGE_PX), y: clamp(wanted.y, EDGE_PX, height - EDGE_PX) };
    stage.setView(shifted(stage.view.get(), screen.x - wanted.x, screen.y - wanted.y));
    const now = at(event);
    if (stroke === undefined) {
      for (const hand of stage.hands()) hand.hover?.(now);
      tell(now);
    } else stroke.move(now);
  };

  const holdOrLetGo = (event: KeyboardEvent): void => {
    const now = at(event);
    if (stroke !== undefined) {
      const ended = stroke;
      stroke = undefined;
      ended.end(now);
    } else stroke = firstOf(stage.hands(), (hand) => hand.press?.(now));
    tell(now);
  };

  const press = (event: KeyboardEvent): boolean => {
    const arrow = ARROWS[event.key];
    if (arrow !== undefined) moveCross(event, arrow);
    else if (event.key === ' ') holdOrLetGo(event);
    else if (event.key === 'Enter') {
      const now = at(event);
      const isUsed = event.shiftKey
        ? stage.hands().some((hand) => hand.longPress?.(now) === true)
        : stage.hands().some((hand) => hand.tap?.(now) === true);
      if (isUsed) tell(now);
    } else if (event.key === 'Escape' && stroke !== undefined) {
      stroke.cancel();
      stroke = undefined;
    } else if (event.key === '+' || event.key === '=')
      stage.setView(zoomedAt(stage.view.get(), here(), ZOOM));
    else if (event.key === '-') stage.setView(zoomedAt(stage.view.get(), here(), 1 / ZOOM));
    else if (event.key === '0') stage.fitAgain();
    else if (event.key === '<') stage.setView(zoomedAt(stage.view.get(), here(), 1, -TURN_DEG));
    else if (event.key === '>') stage.setView(zoomedAt(stage.view.get(), here(), 1, TURN_DEG));
    else return false;
    return true;
  };

  root.addEventListener(
    'keydown',
    (event) => {
      if (event.defaultPrevented || event.ctrlKey || event.metaKey) return;
      if (!press(event)) return;
      event.preventDefault();
      event.stopPropagation();
      show();
    },
    { signal },
  );
  root.addEventListener(
    'pointerdown',
    () => {
      screen = undefined;
      stroke?.cancel();
      stroke = undefined;
      show();
    },
    { signal, capture: true },
  );
  root.addEventListener('blur', () => ((cross.hidden = true), undefined), { signal });
  root.addEventListener('focus', () => show(), { signal });
  return () => end.abort();
}

function clamp(value: number, least: number, most: number): number {
  return Math.max(least, Math.min(Math.max(least, most), value));
}
