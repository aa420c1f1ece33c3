import {
  applyAffine,
  curveFromPolyline,
  intersectRegions,
  offsetRegions,
  transformCurve,
} from '@hidebound/geometry';
import type { Affine, Curve, Point, Region } from '@hidebound/geometry';
import type { Hide } from '@hidebound/leather';
import { chain, path, regionCurves } from '../drawing/build.js';
import { hatchLines } from '../drawing/hatch.js';
import type { DrawingElement } from '../drawing/model.js';
import {
  BARE_HIDE,
  FINE_LINE_MM,
  HAIRLINE_MM,
  HIDE_EDGE_MM,
  INK,
  INK_SOFT,
  MARK_LINE_MM,
  PAPER,
  RULE,
  UNSURE_GLOW,
} from '../sheet/palette.js';
import type { HideMark, HideMarks, MarkMeaning } from './hide-marks.js';
import type { HideView } from './hide-view.js';
import { regionOnDrawing } from './hide-view.js';
import { markPattern } from './mark-pattern.js';
import type { PictureStyle } from './picture-style.js';

/** A flaw or zone on the drawing. */
export interface DrawnMark {
  readonly label: string;
  readonly meaning: MarkMeaning;
  readonly curves: readonly Curve[];
  readonly regions: readonly Region[];
  /** What is drawn for a flaw: its own regions, grown where they are too thin for a pattern. */
  readonly seen: readonly Region[];
}

/** A flaw smaller than this on the drawing gets a ring of this radius, so that its pattern can be seen. */
const LEAST_FLAW_MM = 0.9;

/** The mark moved onto the drawing; its region kept within the hide. */
export function drawnFlaw(mark: HideMark, view: HideView, hide: Region, style: PictureStyle): DrawnMark {
  const drawn = drawnZone(mark, view, hide);
  return { ...drawn, seen: visibleRegions(drawn.regions, style) };
}

/** As for a flaw, but never grown. */
export function drawnZone(mark: HideMark, view: HideView, hide: Region): DrawnMark {
  const moved = mark.regions.map((region) => regionOnDrawing(view.toDrawing, region));
  const within = intersectRegions(moved, [{ outer: hide.outer, openings: [] }]);
  const regions = within.length > 0 ? within : moved;
  return {
    label: mark.label,
    meaning: mark.meaning,
    curves: mark.curves.map((curve) => transformCurve(view.toDrawing, curve)),
    regions,
    seen: regions,
  };
}

/** The bare hide's leather; openings show the paper. */
export function hideGround(hide: Hide, view: HideView): DrawingElement[] {
  return [
    path(edgeCurves(hide, view), { fill: BARE_HIDE }),
    ...hide.openings.map((opening) => path([transformCurve(view.toDrawing, opening)], { fill: PAPER })),
  ];
}

/** The hide's edge and those of its openings. Drawn late: no zone or hatching may nibble at it. */
export function hideEdge(hide: Hide, view: HideView, style: PictureStyle): DrawingElement[] {
  return [path(edgeCurves(hide, view), { stroke: { colour: INK, widthMm: HIDE_EDGE_MM * style.pen } })];
}

function edgeCurves(hide: Hide, view: HideView): Curve[] {
  return [hide.outline, ...hide.openings].map((curve) => transformCurve(view.toDrawing, curve));
}

/** Backbone with a dash-dot line, and the strokes of least stretch as short fine ones. */
export function directionLines(hide: Hide, view: HideView, style: PictureStyle): DrawingElement[] {
  const { grow } = style;
  const elements: DrawingElement[] = hide.tightness.map((stroke) =>
    chain(movePoints(view.toDrawing, stroke), false, {
      stroke: { colour: RULE, widthMm: FINE_LINE_MM * style.pen, dashMm: [1.6 * grow, 1 * grow] },
    }),
  );
  if (hide.backbone !== undefined) {
    elements.push(
      chain(movePoints(view.toDrawing, hide.backbone), false, {
        stroke: {
          colour: INK_SOFT,
          widthMm: MARK_LINE_MM * style.pen,
          dashMm: [5 * grow, 1 * grow, 0.6 * grow, 1 * grow],
        },
      }),
    );
  }
  return elements;
}

/** Zones: their outlines, fine and dash-dotted; never-zones in the pattern of what is never used. */
export function zoneLines(zones: readonly DrawnMark[], style: PictureStyle): DrawingElement[] {
  const { grow } = style;
  return zones.flatMap((zone) => [
    ...(zone.meaning.never ? markPattern(zone.meaning, zone.regions, [], grow) : []),
    path(zone.curves, {
      stroke: {
        colour: INK_SOFT,
        widthMm: FINE_LINE_MM * style.pen,
        dashMm: [3 * grow, 0.8 * grow, 0.4 * grow, 0.8 * grow],
      },
    }),
  ]);
}

/** Flaws in the pattern of their meaning, those that would be too small to see in a ring. */
export function flawPatterns(flaws: readonly DrawnMark[], style: PictureStyle): DrawingElement[] {
  return flaws.flatMap((flaw) => {
    const { seen } = flaw;
    const isGrown = seen !== flaw.regions;
    const curves = isGrown
      ? seen.flatMap((region) =>
          [region.outer, ...region.openings].map((ring) => curveFromPolyline(ring, true)),
        )
      : flaw.curves;
    return markPattern(flaw.meaning, seen, curves, style.grow);
  });
}

function visibleRegions(regions: readonly Region[], style: PictureStyle): readonly Region[] {
  const least = LEAST_FLAW_MM * style.grow;
  const shrunk = offsetRegions(regions, -least / 2, { join: 'round' });
  return shrunk.length > 0 ? regions : offsetRegions(regions, least / 2, { join: 'round' });
}

/** Stretches of the edge that are known only roughly: a fine hatch along them. */
export function unsureEdges(marks: HideMarks, view: HideView, style: PictureStyle): DrawingElement[] {
  if (marks.unsure.length === 0) return [];
  const regions = marks.unsure.map((region) => regionOnDrawing(view.toDrawing, region));
  return [
    // A band of millimetres is thinner than the outline on a reduced sheet; the glow shows where to look.
    path(regions.flatMap(regionCurves), {
      stroke: { colour: UNSURE_GLOW.colour, widthMm: UNSURE_GLOW.widthMm * style.pen },
    }),
    path(hatchLines(regions, { spacingMm: 1.2 * style.grow, angleDeg: 90 }), {
      stroke: { colour: RULE, widthMm: HAIRLINE_MM * style.pen },
    }),
  ];
}

/** Points on the drawing. */
export function movePoints(toDrawing: Affine, points: readonly Point[]): Point[] {
  return points.map((p) => applyAffine(toDrawing, p));
}
