import type { Point } from '@hidebound/geometry';

/** Where something points at the drawing: a mouse, a finger, a pen, or the cross that the keys move. */
export interface At {
  /** On the hide, mm. */
  readonly place: Point;
  /** In the drawing, CSS pixels from its top left corner. */
  readonly screen: Point;
  readonly by: 'mouse' | 'touch' | 'pen' | 'keys';
  readonly shift: boolean;
  /** The element of the drawing that lies there; undefined beside all. */
  readonly target: Element | undefined;
}

/** What follows a pointer from its press until it is let go. */
export interface Stroke {
  move(at: At): void;
  /**
   * What is held is turned by a second finger, so far since it was told last, degrees clockwise. Absent: a second finger
   * takes the stroke back and moves the view.
   */
  turn?(byDeg: number): void;
  /** Let go: the change is made here. */
  end(at: At): void;
  /** Taken back: by Escape, or by a second finger where it can't be turned. */
  cancel(): void;
}

/**
 * What a place of the job does with pointers over the drawing. Of several hands the one that was laid on last is asked
 * first; what none of them takes moves the view.
 */
export interface Hand {
  /** Taking hold; undefined leaves the pointer to others. */
  press?(at: At): Stroke | undefined;
  /** A short press that no stroke took; true where it was used. */
  tap?(at: At): boolean;
  /** Half a second at one place; true where it was used. */
  longPress?(at: At): boolean;
  hover?(at: At): void;
  /** What lies there, in words, for those who don't see it. */
  describe?(at: At): string | undefined;
}
