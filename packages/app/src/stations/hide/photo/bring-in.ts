import type { Point, Polyline } from '@hidebound/geometry';
import type { PhotoView, TraceReport } from '@hidebound/intake/photo';
import type { EdgeHints, Hide, Side } from '@hidebound/leather';
import type { App } from '../../../app/app.js';
import { cell } from '../../../app/cell.js';
import type { Cell } from '../../../app/cell.js';
import { openPhotoDesk } from '../../../work/photo.js';
import type { PhotoDesk } from '../../../work/photo.js';
import type { PhotoFinding, TraceStep } from '../../../work/photo-tasks.js';

/** A photo that was chosen, as the screen shows it. */
export interface Shot {
  /** What it is called in the job. */
  readonly file: string;
  readonly bytes: Uint8Array;
  /** Of the photo itself, upright. */
  readonly width: number;
  readonly height: number;
  /** The picture for the screen, and how many of its pixels make one of the photo. */
  readonly url: string;
  readonly shrink: number;
}

/** What lies beside the hide and tells how large things are. */
export type Beside = 'sheets' | 'rectangle' | 'card' | 'rules';
export type Four<T> = readonly [T, T, T, T];

/** Four places on a photo (px) with the lengths that belong to them, as far as they were given. */
export interface StatedPlaces {
  readonly file: string;
  readonly at: Four<Point>;
  /** A rectangle's width and height, mm. */
  readonly sidesMm: readonly [number | undefined, number | undefined];
  /** What the rules read at the four places, mm: two of the one, two of the other. */
  readonly readsMm: Four<number | undefined>;
}

/** What a photo shows: the hide as it lies, or a part of it; the same in a light from low at one side; its other side. */
export const SHOWS = ['as it lies', 'raking', 'other side'] as const;
export type Shows = (typeof SHOWS)[number];

/** What goes on with the photos: a step of tracing, and what ends it. */
export interface Working {
  readonly step: TraceStep;
  readonly stop: () => void;
}

/** Why it did not go on. */
export interface Problem {
  readonly code: string;
  /** In the language of the screen, whichever it is by then. */
  readonly words: () => string;
}

export type Pen = 'hide' | 'floor' | 'edge';

export interface PhotoSteps {
  readonly kind: 'photo';
  readonly shots: readonly Shot[];
  readonly shown: number;
  /** What photos show, by their names; without a word, the hide as it lies. */
  readonly shows: ReadonlyMap<string, Shows>;
  /** The hide was dragged along between the photos that show it as it lies. */
  readonly isMoved: boolean;
  readonly sideUp: Side | undefined;
  readonly beside: Beside;
  readonly stated: StatedPlaces | undefined;
  /** Strokes over the photos, px, by the photos' names. */
  readonly strokes: ReadonlyMap<string, EdgeHints>;
  readonly pen: Pen | undefined;
  readonly invoicedMm2: number | undefined;
  readonly thicknessMm: number | undefined;
  readonly working: Working | undefined;
  readonly problem: Problem | undefined;
}

export interface MendSteps {
  readonly kind: 'mend';
  readonly path: string;
  readonly pen: Pen;
  /** mm, on the hide as it was traced. */
  readonly marks: EdgeHints;
  readonly working: Working | undefined;
  readonly problem: Problem | undefined;
}

/** A panel by its measures, as far as they were given. */
export interface PanelSteps {
  readonly kind: 'panel';
  readonly widthMm?: number | undefined;
  readonly heightMm?: number | undefined;
  readonly thicknessMm?: number | undefined;
  readonly least?: 'across' | 'down' | 'unknown';
  readonly problem?: Problem;
}

/** The photo of a traced hide, with what was found on it. */
export interface SeenSteps {
  readonly kind: 'seen';
  readonly path: string;
  readonly shot: Shot;
}

export type BringIn =
  | { readonly kind: 'ways'; readonly working?: boolean; readonly problem?: Problem }
  | PanelSteps
  | PhotoSteps
  | MendSteps
  | SeenSteps;

/** What a trace told that stands in no file; kept for the visit. */
export interface Found {
  /** The hide as it came out: while it is the job's, nobody has changed it. */
  readonly hide: Hide;
  readonly findings: readonly PhotoFinding[];
  readonly report?: TraceReport;
  readonly views: readonly PhotoView[];
}

export const NO_MARKS: EdgeHints = { hideStrokes: [], floorStrokes: [], edgePoints: [] };

export interface HideDesk {
  readonly bringIn: Cell<BringIn | undefined>;
  readonly found: Cell<ReadonlyMap<string, Found>>;
  readonly photos: PhotoDesk;
}

const DESKS = new WeakMap<App, HideDesk>();

/** What this part remembers while the app is open. */
export function hideDesk(app: App): HideDesk {
  const known = DESKS.get(app);
  if (known !== undefined) return known;
  const made: HideDesk = {
    bringIn: cell<BringIn | undefined>(undefined),
    found: cell<ReadonlyMap<string, Found>>(new Map()),
    photos: openPhotoDesk(),
  };
  made.bringIn.watch((now, before) => {
    closeShots(before, now);
    app.redraw();
  });
  made.found.watch(() => app.redraw());
  DESKS.set(app, made);
  return made;
}

/** What is being brought in; without any hide there is nothing else to do. */
export function bringInOf(app: App): BringIn | undefined {
  const now = hideDesk(app).bringIn.get();
  if (now !== undefined) return now;
  return app.place.get().hide === undefined ? { kind: 'ways' } : undefined;
}

export function photoSteps(app: App): PhotoSteps | undefined {
  const now = hideDesk(app).bringIn.get();
  return now?.kind === 'photo' ? now : undefined;
}

export function mendSteps(app: App): MendSteps | undefined {
  const now = hideDesk(app).bringIn.get();
  return now?.kind === 'mend' ? now : undefined;
}

export function changePhotoSteps(app: App, change: Partial<PhotoSteps>): void {
  const now = photoSteps(app);
  if (now !== undefined) hideDesk(app).bringIn.set({ ...now, ...change });
}

export function changeMendSteps(app: App, change: Partial<MendSteps>): void {
  const now = mendSteps(app);
  if (now !== undefined) hideDesk(app).bringIn.set({ ...now, ...change });
}

export function leaveBringIn(app: App): void {
  const now = hideDesk(app).bringIn.get();
  if (now?.kind === 'photo' || now?.kind === 'mend') now.working?.stop();
  hideDesk(app).bringIn.set(undefined);
}

function shotsOf(now: BringIn | undefined): readonly Shot[] {
  if (now?.kind === 'photo') return now.shots;
  return now?.kind === 'seen' ? [now.shot] : [];
}

/** Pictures that are no longer shown give their memory back. */
function closeShots(before: BringIn | undefined, now: BringIn | undefined): void {
  const kept = new Set(shotsOf(now).map(({ url }) => url));
  for (const { url } of shotsOf(before)) if (!kept.has(url)) URL.revokeObjectURL(url);
}

/** One more stroke or place. */
export function withStroke(marks: EdgeHints, pen: Pen, line: Polyline): EdgeHints {
  switch (pen) {
    case 'hide':
      return { ...marks, hideStrokes: [...marks.hideStrokes, line] };
    case 'floor':
      return { ...marks, floorStrokes: [...marks.floorStrokes, line] };
    case 'edge':
      return { ...marks, edgePoints: [...marks.edgePoints, line[line.length - 1]!] };
  }
}

/** The photos that show it so, in their order. */
export function shotsShowing({ shots, shows }: PhotoSteps, what: Shows): readonly Shot[] {
  return shots.filter(({ file }) => (shows.get(file) ?? 'as it lies') === what);
}

/** Whether the hide was dragged along; between photos of one side alone it can have been. */
export function wasMoved(steps: PhotoSteps): boolean {
  return steps.isMoved && shotsShowing(steps, 'as it lies').length > 1;
}

export function countMarks({ hideStrokes, floorStrokes, edgePoints }: EdgeHints): number {
  return hideStrokes.length + floorStrokes.length + edgePoints.length;
}
