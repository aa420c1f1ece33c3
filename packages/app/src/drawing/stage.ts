import { SVG } from '@svgdotjs/svg.js';
import type { G } from '@svgdotjs/svg.js';
import type { Box, Point } from '@hidebound/geometry';
import { cell } from '../app/cell.js';
import type { Watched } from '../app/cell.js';
import type { Hand } from './hand.js';
import { listenToKeys } from './keys.js';
import { listenToPointers } from './pointers.js';
import { FIRST_VIEW, fitted, toPlace, toScreen, viewMatrix } from './view.js';
import type { Size, View } from './view.js';

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
  readonly size: Watched<Size>;
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

  const draw = (): void => {
    frame = 0;
    const [a, b, c, d, e, f] = viewMatrix(view.get());
    parts.world.node.setAttribute('transform', `matrix(${a} ${b} ${c} ${d} ${e} ${f})`);
    if (photo !== undefined) {
      const { pxPerMm, origin } = photo;
      const corner = toScreen(view.get(), origin);
      const [ka, kb, kc, kd] = [a / pxPerMm, b / pxPerMm, c / pxPerMm, d / pxPerMm];
      parts.photo.style.transform = `matrix(${ka}, ${kb}, ${kc}, ${kd}, ${corner.x}, ${corner.y})`;
    }
  };
  const drawSoon = (): void => {
    if (frame === 0) frame = requestAnimationFrame(draw);
  };
  view.watch(drawSoon);

  const stage: Stage = {
    element,
    view,
    size,
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
      view.set(fitted(view.get(), box, size.get()));
    },
    fitAgain: () => {
      if (fittedBox !== undefined) view.set(fitted(view.get(), fittedBox, size.get()));
    },
    toScreen: (place) => toScreen(view.get(), place),
    toPlace: (screen) => toPlace(view.get(), screen),
    say: (words) => {
      parts.live.textContent = words;
    },
    close: () => {
      cancelAnimationFrame(frame);
      watcher.disconnect();
      stopPointers();
      stopKeys();
      parts.root.remove();
    },
  };

  const watcher = new ResizeObserver(() => {
    const before = size.get();
    size.set({ width: element.clientWidth || 1, height: element.clientHeight || 1 });
    // Until something was seen at all there is nothing to keep; later the middle stays in the middle.
    const after = size.get();
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
  return { root, photo, world, cross, live };
}
