import type { Point } from '@hidebound/geometry';
import type { At, Hand } from '../../../../drawing/hand.js';
import type { Stage } from '../../../../drawing/stage.js';
import type { Four } from '../bring-in.js';

export interface PlacesWork {
  /** The four places now, px of the photo; undefined while none are asked for. */
  places(): Four<Point> | undefined;
  /** While one is moved. */
  moving(which: number, to: Point, at: At): void;
  moved(which: number, to: Point): void;
  letGo(): void;
  describe(which: number): string;
}

/** Places are taken hold of within a finger's width, CSS px; with keys from anywhere. */
const REACH_PX = 30;

/** Drags four places; a tap brings the nearest one there. */
export function placesHand(stage: Stage, work: PlacesWork): Hand {
  const nearest = (at: At): { readonly which: number; readonly distance: number } | undefined => {
    const places = work.places();
    if (places === undefined) return undefined;
    const distances = places.map((place) => {
      const screen = stage.toScreen(place);
      return Math.hypot(screen.x - at.screen.x, screen.y - at.screen.y);
    });
    const distance = Math.min(...distances);
    return { which: distances.indexOf(distance), distance };
  };
  return {
    press: (at) => {
      const found = nearest(at);
      if (found === undefined || (at.by !== 'keys' && found.distance > REACH_PX)) return undefined;
      const { which } = found;
      const place = work.places()![which]!;
      // A finger that takes hold beside the middle does not make it jump.
      const by = at.by === 'keys' ? { x: 0, y: 0 } : { x: place.x - at.place.x, y: place.y - at.place.y };
      const to = (now: At): Point => ({ x: now.place.x + by.x, y: now.place.y + by.y });
      return {
        move: (now) => work.moving(which, to(now), now),
        end: (now) => work.moved(which, to(now)),
        cancel: () => work.letGo(),
      };
    },
    tap: (at) => {
      const found = nearest(at);
      if (found === undefined) return false;
      work.moved(found.which, at.place);
      return true;
    },
    describe: (at) => {
      const found = nearest(at);
      return found === undefined || found.distance > REACH_PX ? undefined : work.describe(found.which);
    },
  };
}
