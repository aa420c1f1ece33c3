import type { Point } from '@hidebound/geometry';
import type { At, Stroke } from './hand.js';
import type { Stage } from './stage.js';
import { pinched, shifted, zoomedAt } from './view.js';

/** A press that moves less than this is a tap, CSS pixels. A finger is less steady than a mouse. */
const TAP_WITHIN_PX = { mouse: 4, pen: 6, touch: 10 } as const;
/** A press that lasts so long, without moving, is a long one (common practice of touch screens, no source). */
const LONG_PRESS_MS = 500;
/** Zoom of one notch of a wheel. */
const WHEEL_ZOOM = 0.0015;
/** Pixels of a wheel's "line" and "page". */
const WHEEL_LINE_PX = 16;
const WHEEL_PAGE_PX = 400;

interface Press {
  readonly id: number;
  readonly start: At;
  last: Point;
  stroke: Stroke | undefined;
  hasMoved: boolean;
  isLong: boolean;
  timer: number;
}

/** Mouse, pen and fingers over the drawing: one works or moves the view, two move, zoom and turn it. */
export function listenToPointers(stage: Stage, root: HTMLElement): () => void {
  const fingers = new Map<number, Point>();
  let press: Press | undefined;
  const end = new AbortController();
  const { signal } = end;

  const at = (event: PointerEvent): At => pointerAt(stage, root, event);
  const hands = () => stage.hands();

  const drop = (): void => {
    if (press === undefined) return;
    clearTimeout(press.timer);
    press.stroke?.cancel();
    press = undefined;
  };

  const down = (event: PointerEvent): void => {
    if (event.button > 1) return;
    root.setPointerCapture(event.pointerId);
    const start = at(event);
    fingers.set(event.pointerId, start.screen);
    if (fingers.size > 1) {
      if (fingers.size > 2 || press?.stroke?.turn === undefined) drop();
      else {
        clearTimeout(press.timer);
        press.hasMoved = true;
      }
      return;
    }
    const isForView = event.button === 1;
    const stroke = isForView ? undefined : firstOf(hands(), (hand) => hand.press?.(start));
    const made: Press = {
      id: event.pointerId,
      start,
      last: start.screen,
      stroke,
      hasMoved: isForView,
      isLong: false,
      timer: 0,
    };
    made.timer = window.setTimeout(() => {
      if (press !== made || made.hasMoved) return;
      if (hands().some((hand) => hand.longPress?.(start) === true)) {
        made.isLong = true;
        made.stroke?.cancel();
        made.stroke = undefined;
      }
    }, LONG_PRESS_MS);
    press = made;
  };

  const move = (event: PointerEvent): void => {
    const now = at(event);
    if (!fingers.has(event.pointerId)) {
      if (event.pointerType === 'mouse') for (const hand of hands()) hand.hover?.(now);
      return;
    }
    if (fingers.size === 2) {
      const before = [...fingers.values()] as [Point, Point];
      fingers.set(event.pointerId, now.screen);
      const after = [...fingers.values()] as [Point, Point];
      if (press?.stroke?.turn === undefined) stage.setView(pinched(stage.view.get(), before, after));
      else {
        if (press.id === event.pointerId) press.stroke.move(now);
        press.stroke.turn(turnedDeg(before, after));
      }
      return;
    }
    fingers.set(event.pointerId, now.screen);
    if (press === undefined || press.id !== event.pointerId || press.isLong) return;
    if (!press.hasMoved && isNear(press.start, now)) return;
    press.hasMoved = true;
    if (press.stroke === undefined) {
      stage.setView(shifted(stage.view.get(), now.screen.x - press.last.x, now.screen.y - press.last.y));
    } else press.stroke.move(now);
    press.last = now.screen;
  };

  const up = (event: PointerEvent): void => {
    if (!fingers.delete(event.pointerId)) return;
    const ended = press;
    if (ended === undefined || ended.id !== event.pointerId) return;
    press = undefined;
    clearTimeout(ended.timer);
    if (ended.isLong) return;
    const now = at(event);
    if (ended.hasMoved) ended.stroke?.end(now);
    else {
      ended.stroke?.cancel();
      // Where a hand takes hold but nothing moved, a tap at the place of the press is meant.
      hands().some((hand) => hand.tap?.(ended.start) === true);
    }
  };

  const cancel = (event: PointerEvent): void => {
    fingers.delete(event.pointerId);
    drop();
  };

  /**
   * A finger gives the drawing the focus when it touches it, so that what was typed elsewhere is taken. What the browser
   * makes of a tap afterwards, as if it were a mouse, would take the focus back from a field that the tap asked for.
   */
  let isFinger = false;
  const focusByFinger = ({ pointerType }: PointerEvent): void => {
    isFinger = pointerType === 'touch';
    if (isFinger) root.focus({ preventScroll: true });
  };
  const keepFocus = (event: MouseEvent): void => {
    if (isFinger) event.preventDefault();
  };

  const wheel = (event: WheelEvent): void => {
    event.preventDefault();
    const unit = [1, WHEEL_LINE_PX, WHEEL_PAGE_PX][event.deltaMode] ?? 1;
    const screen = screenOf(root, event);
    if (event.shiftKey) stage.setView(shifted(stage.view.get(), -event.deltaY * unit, 0));
    else stage.setView(zoomedAt(stage.view.get(), screen, Math.exp(-event.deltaY * unit * WHEEL_ZOOM)));
  };

  root.addEventListener('pointerdown', focusByFinger, { signal });
  root.addEventListener('pointerdown', down, { signal });
  root.addEventListener('mousedown', keepFocus, { signal });
  root.addEventListener('pointermove', move, { signal });
  root.addEventListener('pointerup', up, { signal });
  root.addEventListener('pointercancel', cancel, { signal });
  root.addEventListener('wheel', wheel, { signal, passive: false });
  root.addEventListener('contextmenu', (event) => event.preventDefault(), { signal });
  root.addEventListener('keydown', (event) => event.key === 'Escape' && drop(), { signal });
  return () => end.abort();
}

/** How far two fingers have turned about each other, the shorter way round, degrees clockwise. */
export function turnedDeg(before: readonly [Point, Point], after: readonly [Point, Point]): number {
  const angle = ([one, other]: readonly [Point, Point]): number =>
    (Math.atan2(other.y - one.y, other.x - one.x) * 180) / Math.PI;
  return ((((angle(after) - angle(before) + 180) % 360) + 360) % 360) - 180;
}

/** The first answer that a list gives. */
export function firstOf<T, R>(list: readonly T[], ask: (one: T) => R | undefined): R | undefined {
  for (const one of list) {
    const answer = ask(one);
    if (answer !== undefined) return answer;
  }
  return undefined;
}

function isNear(start: At, now: At): boolean {
  const within = start.by === 'keys' ? 0 : TAP_WITHIN_PX[start.by];
  return Math.hypot(now.screen.x - start.screen.x, now.screen.y - start.screen.y) <= within;
}

function pointerAt(stage: Stage, root: HTMLElement, event: PointerEvent): At {
  const screen = screenOf(root, event);
  const by = event.pointerType === 'touch' || event.pointerType === 'pen' ? event.pointerType : 'mouse';
  // A captured pointer always names the root; what lies below is asked for.
  const target = document.elementFromPoint(event.clientX, event.clientY) ?? undefined;
  return { place: stage.toPlace(screen), screen, by, shift: event.shiftKey, target };
}

function screenOf(root: HTMLElement, { clientX, clientY }: MouseEvent): Point {
  const { left, top } = root.getBoundingClientRect();
  return { x: clientX - left, y: clientY - top };
}
