import type { Point, Polyline } from '@hidebound/geometry';
import type { Hand } from '../../../../drawing/hand.js';
import type { Pen } from '../bring-in.js';

export interface PenWork {
  /** What is drawn with now; undefined while nothing is. */
  pen(): Pen | undefined;
  drawing(line: Polyline): void;
  drawn(pen: Pen, line: Polyline): void;
  letGo(): void;
}

/** Draws strokes of leather and floor, or sets places on the edge by a tap. */
export function penHand(work: PenWork): Hand {
  return {
    press: (at) => {
      const pen = work.pen();
      if (pen === undefined || pen === 'edge') return undefined;
      const line: Point[] = [at.place];
      return {
        move: (now) => {
          line.push(now.place);
          work.drawing(line);
        },
        end: (now) => work.drawn(pen, [...line, now.place]),
        cancel: () => work.letGo(),
      };
    },
    tap: (at) => {
      const pen = work.pen();
      if (pen !== 'edge') return false;
      work.drawn(pen, [at.place]);
      return true;
    },
  };
}
