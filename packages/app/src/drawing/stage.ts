import { SVG } from '@svgdotjs/svg.js';
import type { G } from '@svgdotjs/svg.js';
import type { Box, Point } from '@hidebound/geometry';
import { cell } from '../app/cell.js';
import type { Watched } from '../app/cell.js';
import type { Hand } from './hand.js';
import { listenToKeys } from './keys.js';
import { listenToPointers } from './pointers.js';
import { FIRST_VIEW, fitted, isNearly, seenFrom, toPlace, toScreen, viewMatrix } from './view.js';
import type { Size, View } from './view.js';

/**
 * While the view moves, the drawing is moved as one picture, which costs the page nothing; it is drawn sharp anew when the
 * view rests so long, or has come so much closer or farther, that the picture would look coarse.
 */
const RESTS_AFTER_MS = 140;
const COARSE_FROM = 2.5;

/** A picture below the drawing: the straightened photo of a hide. */
export interface StagePhoto {
  readonly url: string;
  readonly pxPerMm: number;
  /** Place of the picture's top left corner, mm. */
  readonly origin: Point;
}

/** The drawing in mm that lies in the middle of the table, whatever place of the job is open. */
export interface Stage {
  readonly element: HTMLElement;
  readonly view: Watched<View>;
  /** The view that the drawing is drawn sharp for: what is sized by the scale needs no more. Undefined before the first. */
  readonly sharpView: Watched<View | undefined>;
  readonly size: Watched<Size>;
  /** Whether, at rest, something else is seen than all of what was fitted last. */
  readonly isAway: Watched<boolean>;
  /** Whether anything lies on it at all. */
  hasDrawing(): boolean;
  /** A layer of the drawing, mm; later ones lie above. Taken away by `remove()`. */
  layer(name: string): G;
  setPhoto(photo: StagePhoto | undefined): void;
  /** Lays a hand on the drawing; gives back what takes it off. */
  lay(hand: Hand): () => void;
  hands(): readonly Hand[];
  setView(view: View): void;
  /** Shows all of a box, mm; remembered for "show all". */
  fit(box: Box): void;
  /** Shows all of what was fitted last. */
  fitAgain(): void;
  toScreen(place: Point): Point;
  toPlace(screen: Point): Point;
  /** Says something to those who listen instead of looking. */
  say(words: string): void;
  close(): void;
}

export interface StageTexts {
  readonly name: string;
  readonly help: string;
}

export function openStage(element: HTMLElement, texts: StageTexts): Stage {
  const parts = buildParts(element, texts);
  const view = cell<View>(FIRST_VIEW);
  const size = cell<Size>({ width: element.clientWidth || 1, height: element.clientHeight || 1 });
  const laid: Hand[] = [];
  let fittedBox: Box | undefined;
  let photo: StagePhoto | undefined;
  let frame = 0;

  const sharpView = cell<View | undefined>(undefined);
  const isAway = cell(false);
  let isDue = true;
  let rest = 0;

  const draw = (): void => {
    frame = 0;
    const now = view.get();
    const drawn = sharpView.get();
    const ratio = drawn === undefined ? Infinity : now.scale / drawn.scale;
    if (isDue || ratio > COARSE_FROM || ratio < 1 / COARSE_FROM) sharpen(now);
    else moveDrawing(now, drawn ?? now);
    if (photo !== undefined) movePhoto(now, photo);
  };
  const sharpen = (now: View): void => {
    isDue = false;
    parts.world.node.setAttribute('transform', cssMatrix(viewMatrix(now)));
    moveDrawing(now, now);
    sharpView.set(now);
    isAway.set(fittedBox !== undefined && !isNearly(now, fitted(now, fittedBox, size.get())));
  };
  const moveDrawing = (now: View, drawn: View): void => {
    parts.drawing.style.transform = cssMatrix(viewMatrix(seenFrom(drawn, now)));
  };
  const movePhoto = (now: View, { pxPerMm, origin }: StagePhoto): void => {
    const corner = toScreen(now, origin);
    const matrix = viewMatrix({ ...now, scale: now.scale / pxPerMm, x: corner.x, y: corner.y });
    parts.photo.style.transform = cssMatrix(matrix);
  };
  const drawSoon = (): void => {
    if (frame === 0) frame = requestAnimationFrame(draw);
    clearTimeout(rest);
    rest = window.setTimeout(() => {
      cancelAnimationFrame(frame);
      isDue = true;
      frame = requestAnimationFrame(draw);
    }, RESTS_AFTER_MS);
  };
  /** A jump to another view: nothing moves there, so it is drawn sharp at once. */
  const jump = (next: View): void => {
    isDue = true;
    view.set(next);
  };
  view.watch(drawSoon);

  const stage: Stage = {
    element,
    view,
    sharpView,
    size,
    isAway,
    hasDrawing: () => photo !== undefined || parts.world.node.querySelector(':scope > g > *') !== null,
    layer: (name) => parts.world.group().attr({ 'data-layer': name }),
    setPhoto: (next) => {
      photo = next;
      parts.photo.hidden = next === undefined;
      if (next === undefined) parts.photo.removeAttribute('src');
      else if (parts.photo.getAttribute('src') !== next.url) parts.photo.src = next.url;
      drawSoon();
    },
    lay: (hand) => {
      laid.push(hand);
      return () => {
        const index = laid.indexOf(hand);
        if (index >= 0) laid.splice(index, 1);
      };
    },
    hands: () => [...laid].reverse(),
    setView: (next) => view.set(next),
    fit: (box) => {
      fittedBox = box;
      jump(fitted(view.get(), box, size.get()));
    },
    fitAgain: () => {
      if (fittedBox !== undefined) jump(fitted(view.get(), fittedBox, size.get()));
    },
    toScreen: (place) => toScreen(view.get(), place),
    toPlace: (screen) => toPlace(view.get(), screen),
    say: (words) => {
      parts.live.textContent = words;
    },
    close: () => {
      cancelAnimationFrame(frame);
      clearTimeout(rest);
      watcher.disconnect();
      stopPointers();
      stopKeys();
      parts.root.remove();
    },
  };

  const watcher = new ResizeObserver(() => {
    const before = size.get();
    const wasFitted = fittedBox !== undefined && isNearly(view.get(), fitted(view.get(), fittedBox, before));
    size.set({ width: element.clientWidth || 1, height: element.clientHeight || 1 });
    const after = size.get();
    // Who saw all of it sees all of it; else the middle stays in the middle.
    if (wasFitted && fittedBox !== undefined) {
      view.set(fitted(view.get(), fittedBox, after));
      return;
    }
    view.update((now) => ({
      ...now,
      x: now.x + (after.width - before.width) / 2,
      y: now.y + (after.height - before.height) / 2,
    }));
  });
  watcher.observe(element);
  const stopPointers = listenToPointers(stage, parts.root);
  const stopKeys = listenToKeys(stage, parts.root, parts.cross);
  return stage;
}

interface StageParts {
  readonly root: HTMLElement;
  readonly photo: HTMLImageElement;
  readonly drawing: SVGSVGElement;
  readonly world: G;
  readonly cross: HTMLElement;
  readonly live: HTMLElement;
}

function buildParts(element: HTMLElement, { name, help }: StageTexts): StageParts {
  const root = document.createElement('div');
  root.className = 'stage';
  root.tabIndex = 0;
  root.setAttribute('role', 'application');
  root.setAttribute('aria-label', name);
  root.setAttribute('aria-description', help);
  const photo = document.createElement('img');
  photo.className = 'stage-photo';
  photo.alt = '';
  photo.hidden = true;
  photo.draggable = false;
  root.append(photo);
  const svg = SVG().addTo(root).addClass('stage-drawing').attr({ 'aria-hidden': 'true' });
  const world = svg.group();
  const cross = document.createElement('div');
  cross.className = 'stage-cross';
  cross.hidden = true;
  const live = document.createElement('div');
  live.className = 'for-listeners';
  live.setAttribute('aria-live', 'polite');
  root.append(cross, live);
  element.append(root);
  return { root, photo, drawing: svg.node, world, cross, live };
}

function cssMatrix(matrix: readonly number[]): string {
  return `matrix(${matrix.join(', ')})`;
}
