import type { Curve, Point } from '@hidebound/geometry';

/** What a reader of any vector format hands on: lines and texts in mm, with what the file says of them. */
export interface Drawing {
  readonly lines: readonly DrawnLine[];
  readonly texts: readonly DrawnText[];
}

/** A line as drawn: mm in the file's own frame, y down, on the 1 µm grid. */
export interface DrawnLine {
  readonly curve: Curve;
  readonly source: DrawnSource;
  /** `#rrggbb`, or `other`; nothing if it has no stroke. */
  readonly stroke?: string;
  readonly fill?: string;
  readonly widthMm: number;
  readonly isDashed: boolean;
  /** It lies within another outline of the same element as a hole in its filled area. */
  readonly isHole: boolean;
}

export interface DrawnText {
  readonly text: string;
  readonly at: Point;
  /** Direction in which it is read, clockwise from the x axis; where the format says it. */
  readonly angleDeg?: number;
  /** Size of its letters, mm; where the format says it. */
  readonly sizeMm?: number;
  readonly source: DrawnSource;
}

/** The element that a line or text comes from, and the groups around it. */
export interface DrawnSource {
  /** As messages call it: "#flap" or "<path>". */
  readonly name: string;
  /** Line of the file, where the format has lines. */
  readonly line?: number;
  readonly labels: Labels;
  /** Innermost first. */
  readonly groups: readonly DrawnGroup[];
}

export interface DrawnGroup {
  /** One number for each time that the group is drawn. */
  readonly key: number;
  readonly labels: Labels;
  /** It is one drawing of something drawn elsewhere too (a clone), so its own name comes before the original's. */
  readonly isClone: boolean;
}

/** The names that a file gives to an element. */
export interface Labels {
  /** Names meant for people, best first: the program's label, `data-name`, title. */
  readonly given: readonly string[];
  readonly id?: string;
  readonly classes: readonly string[];
  /** `data-*` attributes by the part of their name after `data-`. */
  readonly data: Readonly<Record<string, string>>;
}

/** Names by which a rule of roles may call the element: given names, id, classes. */
export function allLabels(labels: Labels): string[] {
  return [...labels.given, ...(labels.id === undefined ? [] : [labels.id]), ...labels.classes];
}
