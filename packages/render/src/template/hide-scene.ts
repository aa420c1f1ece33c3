import {
  MIRROR_X,
  IDENTITY,
  applyAffine,
  composeAffine,
  curveFromPolyline,
  flattenCurve,
  regionCentroid,
  transformCurve,
  transformRegion,
} from '@hidebound/geometry';
import type { Affine, Curve, Point } from '@hidebound/geometry';
import type { Hide, HolePlaces, Layout, Workshop } from '@hidebound/leather';
import { hatchLines } from '../drawing/hatch.js';
import { hideMarks, meaningWords } from '../picture/hide-marks.js';
import { hideShape } from '../picture/hide-view.js';
import type { HideView, SeenFrom } from '../picture/hide-view.js';
import { copyKey, cuttingNumbers, placePieces, placementTransform } from '../picture/placed-pieces.js';
import { freeingCutStretches } from '../picture/work-lines.js';
import type { LengthUnit } from '../sheet/words.js';
import { hasAllowanceLine, orderPieceOf, placedPieceWords } from './piece-words.js';
import { stitchHolesOf } from './stitch-holes.js';
import { sceneLine, sceneOfPiece, sceneRuns } from './template-scene.js';
import type { SceneLine, SceneNote, TemplateScene } from './template-scene.js';

export interface HideSceneOptions {
  readonly layout: Layout;
  readonly hide: Hide;
  readonly side: SeenFrom;
  readonly units: LengthUnit;
  readonly workshop?: Workshop;
  readonly stitchHoles: readonly HolePlaces[];
}

/** How closely the hide's edge is followed where pages are chosen by it. */
const EDGE_TOLERANCE_MM = 0.2;

/**
 * One hide's whole layout at full scale, in the hide's own frame, mirrored if seen from the flesh side: edge, backbone,
 * flaws, lanes' first cuts, rough cuts, the freeing cut, and every piece that is still to be cut.
 */
export function hideScene(options: HideSceneOptions): TemplateScene {
  const { layout, hide, side } = options;
  const toScene = sideTransform(side);
  const pieces = placedPieces(options, toScene).map(sceneOfPiece);
  const flaws = flawLines(options, toScene);
  const work = workLines(options, toScene);
  return {
    shapes: pieces.map(({ shape }) => shape),
    edges: [hide.outline, ...hide.openings].map((curve) =>
      flattenCurve(transformCurve(toScene, curve), EDGE_TOLERANCE_MM).slice(0, -1),
    ),
    lines: [
      ...edgeLines(hide, toScene),
      ...flaws.lines,
      ...work.lines,
      ...pieces.flatMap(({ lines }) => lines),
    ],
    notes: [...flaws.notes, ...work.notes, ...endNotes(hide, toScene)],
  };

  /** Pieces that are cut or spoiled are on the hide no more. */
  function placedPieces(from: HideSceneOptions, toFrame: Affine) {
    const numbers = cuttingNumbers(layout);
    const planned = { ...layout, placements: layout.placements.filter(({ state }) => state === 'planned') };
    const view: HideView = { toDrawing: toFrame, scale: 1 };
    return placePieces(planned, hide.id, view).map(({ placement, piece }) => ({
      piece,
      toScene: composeAffine(toFrame, placementTransform(placement)),
      words: placedPieceWords(layout, placement, numbers.get(copyKey(placement)) ?? '', from.units),
      hasAllowance: hasAllowanceLine(piece, orderPieceOf(layout, piece)),
      stitchHoles: stitchHolesOf(from.stitchHoles, piece),
    }));
  }
}

/** Grain side: as stored; flesh side: the mirror image. */
export function sideTransform(side: SeenFrom): Affine {
  return side === 'flesh' ? MIRROR_X : IDENTITY;
}

function edgeLines(hide: Hide, toScene: Affine): SceneLine[] {
  const runs = [hide.outline, ...hide.openings].flatMap((curve) =>
    sceneRuns('hide edge', transformCurve(toScene, curve)),
  );
  if (hide.backbone === undefined) return runs;
  const backbone = curveFromPolyline(hide.backbone, false);
  return [...runs, sceneLine('backbone', transformCurve(toScene, backbone))];
}

/** Hatching of what is never to be used: wide, so that lines on it can be seen. */
const HATCH = { spacingMm: 5, angleDeg: 45 } as const;

function flawLines(options: HideSceneOptions, toScene: Affine): Drawn {
  const { flaws } = hideMarks(options.hide, options.workshop);
  const lines: SceneLine[] = [];
  const notes: SceneNote[] = [];
  for (const { label, meaning, curves, regions } of flaws) {
    const kind = meaning.never ? 'flaw never' : 'flaw';
    const moved = regions.map((region) => transformRegion(toScene, region));
    lines.push(...curves.map((curve) => sceneLine(kind, transformCurve(toScene, curve))));
    if (meaning.never) lines.push(...hatchLines(moved, HATCH).map((curve) => sceneLine(kind, curve)));
    const [home] = moved;
    if (home === undefined) continue;
    notes.push({ text: `${label}: ${meaningWords(meaning)}`, at: regionCentroid(home), home });
  }
  return { lines, notes };
}

interface Drawn {
  readonly lines: readonly SceneLine[];
  readonly notes: readonly SceneNote[];
}

function workLines({ layout, hide, side }: HideSceneOptions, toScene: Affine): Drawn {
  const lines: SceneLine[] = [];
  const notes: SceneNote[] = [];
  const straight = (a: Point, b: Point): Curve => transformCurve(toScene, curveFromPolyline([a, b], false));
  for (const lane of layout.lanes.filter((each) => each.hide === hide.id)) {
    lines.push(sceneLine('lane', straight(lane.from, lane.to)));
    const at = applyAffine(toScene, lane.from);
    notes.push({ text: `lane ${lane.id}, straight first cut`, at });
  }
  for (const block of layout.roughCuts.filter((each) => each.hide === hide.id)) {
    lines.push(sceneLine('rough cut', transformCurve(toScene, curveFromPolyline(block.outline, true))));
    const words = block.preparation === undefined ? '' : `, ${block.preparation}`;
    notes.push({ text: `rough cut ${block.id}${words}`, at: applyAffine(toScene, block.outline[0]!) });
  }
  for (const swatch of layout.swatches.filter((each) => each.hide === hide.id)) {
    lines.push(sceneLine('cut', transformCurve(toScene, curveFromPolyline(swatch.outline, true))));
    notes.push({ text: 'swatch', at: applyAffine(toScene, swatch.outline[0]!) });
  }
  const yields = layout.yield.hides.find((each) => each.hide === hide.id);
  const own: HideView = { toDrawing: sideTransform(side), scale: 1 };
  const leather = transformRegion(toScene, hideShape(hide));
  for (const [from, to] of freeingCutStretches(yields, own, leather)) {
    lines.push(sceneLine('freeing cut', curveFromPolyline([from, to], false)));
    notes.push({ text: 'freeing cut', at: from });
  }
  return { lines, notes };
}

function endNotes(hide: Hide, toScene: Affine): SceneNote[] {
  if (hide.backbone === undefined) return [];
  const ends = [
    ['head', hide.backbone[0]!],
    ['tail', hide.backbone[hide.backbone.length - 1]!],
  ] as const;
  return ends.map(([text, at]) => ({ text, at: applyAffine(toScene, at) }));
}
