import type { Point } from '@hidebound/geometry';
import type { Stage } from '../../../../drawing/stage.js';
import type { PicturePeek } from './picture-peek.js';

/** Side of the glass, CSS px, and how much larger it shows the photo than the drawing does. */
const GLASS_PX = 132;
const TIMES = 3;

export interface Magnifier {
  /** Shows what lies below a place of the photo that is seen at `screen`. */
  show(peek: PicturePeek, at: Point, screen: Point): void;
  hide(): void;
  close(): void;
}

/** A glass in the corner of the drawing: what is below a finger is seen there. */
export function openMagnifier(stage: Stage): Magnifier {
  const canvas = document.createElement('canvas');
  const dense = Math.min(2, devicePixelRatio);
  canvas.width = GLASS_PX * dense;
  canvas.height = GLASS_PX * dense;
  canvas.className = 'hide-glass';
  canvas.hidden = true;
  canvas.setAttribute('aria-hidden', 'true');
  stage.element.append(canvas);
  return {
    show: ({ shot, image }, at, screen) => {
      canvas.hidden = false;
      // Never below the hand.
      canvas.classList.toggle('on-right', screen.x < stage.size.get().width / 2);
      const pen = canvas.getContext('2d')!;
      const seen = (GLASS_PX / (stage.view.get().scale * TIMES)) * shot.shrink;
      pen.fillRect(0, 0, canvas.width, canvas.height);
      pen.drawImage(
        image,
        at.x * shot.shrink - seen / 2,
        at.y * shot.shrink - seen / 2,
        seen,
        seen,
        0,
        0,
        canvas.width,
        canvas.height,
      );
      drawCross(pen, canvas.width / 2, dense);
    },
    hide: () => {
      canvas.hidden = true;
    },
    close: () => canvas.remove(),
  };
}

/** Light on dark, so that it is seen on any leather. */
function drawCross(pen: CanvasRenderingContext2D, middle: number, dense: number): void {
  for (const [width, colour] of [
    [3 * dense, '#2b2019'],
    [dense, '#fffaf0'],
  ] as const) {
    pen.lineWidth = width;
    pen.strokeStyle = colour;
    pen.beginPath();
    pen.moveTo(middle - 24 * dense, middle);
    pen.lineTo(middle + 24 * dense, middle);
    pen.moveTo(middle, middle - 24 * dense);
    pen.lineTo(middle, middle + 24 * dense);
    pen.stroke();
  }
}
