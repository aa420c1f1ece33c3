import type { Box, Point } from '@hidebound/geometry';

/** How the hide is seen: screen = turn · scale · place + shift. Screen in CSS pixels, places in mm. */
export interface View {
  readonly scale: number;
  /** Clockwise as seen. */
  readonly turnDeg: number;
  readonly x: number;
  readonly y: number;
}

export interface Size {
  readonly width: number;
  readonly height: number;
}

/** From a whole herd on the floor to the pore: pixels per mm. */
export const SCALES = { least: 0.02, most: 60 } as const;

export const FIRST_VIEW: View = { scale: 0.5, turnDeg: 0, x: 0, y: 0 };

export function toScreen({ scale, turnDeg, x, y }: View, place: Point): Point {
  const { cos, sin } = turnOf(turnDeg);
  return {
    x: scale * (cos * place.x - sin * place.y) + x,
    y: scale * (sin * place.x + cos * place.y) + y,
  };
}

export function toPlace({ scale, turnDeg, x, y }: View, screen: Point): Point {
  const { cos, sin } = turnOf(turnDeg);
  const [dx, dy] = [(screen.x - x) / scale, (screen.y - y) / scale];
  return { x: cos * dx + sin * dy, y: cos * dy - sin * dx };
}

export function shifted(view: View, dx: number, dy: number): View {
  return { ...view, x: view.x + dx, y: view.y + dy };
}

/** Whether one would hardly see a difference between two views. */
export function isNearly(a: View, b: View): boolean {
  const isPlaced = Math.abs(a.x - b.x) < 2 && Math.abs(a.y - b.y) < 2;
  return isPlaced && a.turnDeg === b.turnDeg && Math.abs(a.scale / b.scale - 1) < 0.01;
}

/** Closer or farther, and turned, while what is at `at` on the screen stays there. */
export function zoomedAt(view: View, at: Point, factor: number, byDeg = 0): View {
  const place = toPlace(view, at);
  const scale = Math.min(SCALES.most, Math.max(SCALES.least, view.scale * factor));
  const turned = { scale, turnDeg: wholeTurn(view.turnDeg + byDeg), x: 0, y: 0 };
  const now = toScreen(turned, place);
  return { ...turned, x: at.x - now.x, y: at.y - now.y };
}

/** How what was drawn for one view must be moved, turned and scaled on the screen to be as in another. */
export function seenFrom(drawn: View, now: View): View {
  const corner = toScreen(now, toPlace(drawn, { x: 0, y: 0 }));
  return { scale: now.scale / drawn.scale, turnDeg: now.turnDeg - drawn.turnDeg, x: corner.x, y: corner.y };
}

/** Two fingers: both keep the places that they touch. */
export function pinched(view: View, before: readonly [Point, Point], now: readonly [Point, Point]): View {
  const [a, b] = [between(before), between(now)];
  const moved = shifted(view, b.middle.x - a.middle.x, b.middle.y - a.middle.y);
  if (a.length === 0 || b.length === 0) return moved;
  return zoomedAt(moved, b.middle, b.length / a.length, b.angleDeg - a.angleDeg);
}

/** All of a box, in the middle, with some air around it. */
export function fitted({ turnDeg }: View, box: Box, { width, height }: Size, airPx = 24): View {
  const corners = [
    { x: box.minX, y: box.minY },
    { x: box.maxX, y: box.minY },
    { x: box.maxX, y: box.maxY },
    { x: box.minX, y: box.maxY },
  ].map((corner) => toScreen({ scale: 1, turnDeg, x: 0, y: 0 }, corner));
  const [xs, ys] = [corners.map(({ x }) => x), corners.map(({ y }) => y)];
  const [minX, maxX, minY, maxY] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const scale = Math.min(
    Math.max(1, width - 2 * airPx) / Math.max(1, maxX - minX),
    Math.max(1, height - 2 * airPx) / Math.max(1, maxY - minY),
  );
  const bound = Math.min(SCALES.most, Math.max(SCALES.least, scale));
  return {
    scale: bound,
    turnDeg,
    x: width / 2 - (bound * (minX + maxX)) / 2,
    y: height / 2 - (bound * (minY + maxY)) / 2,
  };
}

/** For SVG and CSS alike: matrix(a b c d e f). */
export function viewMatrix({
  scale,
  turnDeg,
  x,
  y,
}: View): readonly [number, number, number, number, number, number] {
  const { cos, sin } = turnOf(turnDeg);
  return [scale * cos, scale * sin, -scale * sin, scale * cos, x, y];
}

function between([one, other]: readonly [Point, Point]) {
  const [dx, dy] = [other.x - one.x, other.y - one.y];
  return {
    middle: { x: (one.x + other.x) / 2, y: (one.y + other.y) / 2 },
    length: Math.hypot(dx, dy),
    angleDeg: (Math.atan2(dy, dx) * 180) / Math.PI,
  };
}

function turnOf(deg: number): { readonly cos: number; readonly sin: number } {
  const angle = (deg * Math.PI) / 180;
  return { cos: Math.cos(angle), sin: Math.sin(angle) };
}

function wholeTurn(deg: number): number {
  return ((deg % 360) + 360) % 360;
}
