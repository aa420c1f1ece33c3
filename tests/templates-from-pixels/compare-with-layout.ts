import { findLayout } from './find-layout.js';
import { layoutSamples } from './layout-lines.js';
import type { LayoutSample } from './layout-lines.js';
import { emptyEquations, observe, solve } from './least-squares.js';
import { measureLines } from './measure-lines.js';
import type { Measured } from './measure-lines.js';
import { moved } from './pose.js';
import type { Pose } from './pose.js';
import type { PageReading } from './read-page.js';

export interface Comparison {
  /** Places of the layout that were measured in the pixels, looked at but hidden by other lines, and where nothing is. */
  readonly seen: readonly Measured[];
  readonly hidden: number;
  readonly absent: readonly Measured[];
  /** Samples of the layout that no page shows. */
  readonly unshown: readonly LayoutSample[];
  readonly greatestMm: number;
  readonly worst: Measured | undefined;
}

export interface LayoutOfHide {
  readonly file: string;
  readonly hide: string;
}

const SAMPLE_EVERY = 4;
/** How far a line is looked for, mm: wide at first, as the layout is found to whole mm only. */
const REACHES = [2.5, 1.5, 1.5];

/** Lays the layout on the joined pages by one rigid motion, and measures how far its lines are from the printed ones. */
export function compareWithLayout(
  readings: readonly PageReading[],
  poses: ReadonlyMap<number, Pose>,
  layout: LayoutOfHide,
  fileOf: (reading: PageReading) => string,
): Comparison {
  const samples = layoutSamples(layout.file, layout.hide, SAMPLE_EVERY);
  let layoutAt = findLayout(readings, poses, samples);
  const measure = (reach: number): Measured[] =>
    measureLines(readings, poses, samples, layoutAt, reach, fileOf);
  for (const reach of REACHES) layoutAt = closer(layoutAt, measure(reach));
  const looks = measure(REACHES[REACHES.length - 1]!);
  const seen = looks.filter(({ isHidden, off }) => !isHidden && off !== undefined);
  const shown = new Set(looks.map(({ sample }) => sample));
  const worst = seen.reduce<Measured | undefined>(
    (most, one) => (most === undefined || Math.abs(one.off!) > Math.abs(most.off!) ? one : most),
    undefined,
  );
  return {
    seen,
    hidden: looks.filter(({ isHidden }) => isHidden).length,
    absent: looks.filter(({ off }) => off === undefined),
    unshown: samples.filter((sample) => !shown.has(sample)),
    greatestMm: Math.abs(worst?.off ?? Infinity),
    worst,
  };
}

/** The rigid motion that makes the squares of the distances least. */
function closer(layoutAt: Pose, looks: readonly Measured[]): Pose {
  const equations = emptyEquations(3);
  for (const { sample, off, isHidden } of looks) {
    if (isHidden || off === undefined) continue;
    const turned = { x: 0, y: 0, turn: layoutAt.turn };
    const at = moved(turned, sample);
    const across = moved(turned, { x: sample.acrossX, y: sample.acrossY });
    const lever = across.y * at.x - across.x * at.y;
    observe(
      equations,
      [
        [0, across.x],
        [1, across.y],
        [2, lever],
      ],
      off,
    );
  }
  const [x, y, turn] = solve(equations) as unknown as [number, number, number];
  return { x: layoutAt.x + x, y: layoutAt.y + y, turn: layoutAt.turn + turn };
}
