import { regionArea, ringCentroid, subtractRegions, transformCurve } from '@hidebound/geometry';
import type { Box, Point, Region } from '@hidebound/geometry';
import type { Hide, Layout, Swatch, Workshop } from '@hidebound/leather';
import type { DrawingElement, GroupElement, Layer } from '../drawing/model.js';
import { segmentBox } from '../label/label-box.js';
import type { LabelBox } from '../label/label-box.js';
import { shapeOf } from '../label/place-outside.js';
import type { FreeSpace, Shape } from '../label/place-outside.js';
import { INK } from '../sheet/palette.js';
import { areaFigure, areaUnit, sizeWords } from '../sheet/words.js';
import type { LengthUnit } from '../sheet/words.js';
import type { FontBook } from '../text/font-book.js';
import { gonePieces } from './gone-pieces.js';
import { hideMarks } from './hide-marks.js';
import {
  directionLines,
  drawnFlaw,
  drawnZone,
  flawPatterns,
  hideEdge,
  hideGround,
  movePoints,
  unsureEdges,
  zoneLines,
} from './hide-layers.js';
import type { DrawnMark } from './hide-layers.js';
import { hideShape, regionOnDrawing, ringOnDrawing } from './hide-view.js';
import type { HideView } from './hide-view.js';
import { boxSides, labelFlaws, largestRegion, labelThing, labelZones } from './mark-labels.js';
import { offcutPattern } from './mark-pattern.js';
import { labelPieces } from './piece-labels.js';
import type { LabelDesk } from './piece-labels.js';
import { pieceGrounds, pieceLines } from './piece-layers.js';
import type { PictureStyle } from './picture-style.js';
import { hidePhoto } from './hide-photo.js';
import type { HidePictures } from './hide-photo.js';
import { isReadingLabel, labelReadings } from './reading-labels.js';
import { placePieces } from './placed-pieces.js';
import type { PlacedPiece } from './placed-pieces.js';
import { freeingCutLines, freeingCutStretches, laneLines, roughCutLines } from './work-lines.js';

export interface PictureRequest {
  readonly hide: Hide;
  /** Absent: the bare hide. */
  readonly layout?: Layout;
  readonly view: HideView;
  readonly style: PictureStyle;
  readonly fonts: FontBook;
  readonly units: LengthUnit;
  readonly workshop?: Workshop;
  readonly pictures?: HidePictures;
  /** Labels stay within this. */
  readonly within: Box;
  /** What else is drawn, above the cut lines. */
  readonly extra?: PictureExtra;
}

/** More on a picture than layout and hide, on the drawing. */
export interface PictureExtra {
  readonly layers: readonly Layer[];
  /** What no label may hide. */
  readonly reserved: readonly LabelBox[];
  readonly named: readonly NamedPoint[];
}

/** A point with a name of its own, in bold. */
export interface NamedPoint {
  readonly text: string;
  readonly at: Point;
  /** The name stands as near as it can, over lines and pieces too. */
  readonly isClose?: boolean;
}

/** What is on the picture, so that the legend explains that and no more. */
export interface PictureContent {
  /** Those that are still to be cut. */
  readonly pieces: readonly PlacedPiece[];
  /** Cut and spoiled already. */
  readonly gone: readonly PlacedPiece[];
  readonly flaws: readonly DrawnMark[];
  readonly zones: readonly DrawnMark[];
  readonly hasBackbone: boolean;
  readonly hasStrokes: boolean;
  readonly hasLanes: boolean;
  readonly hasRoughCuts: boolean;
  readonly hasSwatches: boolean;
  readonly hasFreeingCut: boolean;
  readonly hasOffcuts: boolean;
  readonly hasUnsureEdges: boolean;
  readonly hasReadings: boolean;
}

/** The hide with everything on it, from the ground up, and what that is. */
export function layoutPicture(request: PictureRequest): {
  readonly layers: readonly Layer[];
  readonly content: PictureContent;
} {
  const scene = buildScene(request);
  const layers = sceneLayers(request, scene);
  const hasReadings = layers.some((layer) => layer.elements.some(isReadingLabel));
  return { layers, content: { ...sceneContent(request, scene), hasReadings } };
}

interface Offcut {
  readonly hide: Hide;
  readonly region: Region;
}

interface Scene {
  readonly leather: Region;
  readonly marks: ReturnType<typeof hideMarks>;
  readonly flaws: readonly DrawnMark[];
  readonly zones: readonly DrawnMark[];
  readonly pieces: readonly PlacedPiece[];
  readonly gone: readonly PlacedPiece[];
  readonly offcuts: readonly Offcut[];
  readonly freeing: readonly (readonly [Point, Point])[];
}

function buildScene(request: PictureRequest): Scene {
  const { hide, layout, view } = request;
  const leather = regionOnDrawing(view.toDrawing, hideShape(hide));
  const marks = hideMarks(hide, request.workshop);
  const placed = layout === undefined ? [] : placePieces(layout, hide.id, view);
  const isPlanned = ({ placement }: PlacedPiece): boolean => placement.state === 'planned';
  return {
    leather,
    marks,
    flaws: marks.flaws.map((flaw) => drawnFlaw(flaw, view, leather, request.style)),
    zones: marks.zones.map((zone) => drawnZone(zone, view, leather)),
    pieces: placed.filter(isPlanned),
    gone: placed.filter((piece) => !isPlanned(piece)),
    offcuts: (layout?.offcuts ?? [])
      .filter((offcut) => offcut.parent === hide.id)
      .map((offcut) => ({ hide: offcut, region: regionOnDrawing(view.toDrawing, hideShape(offcut)) })),
    freeing: freeingCutStretches(
      layout?.yield.hides.find((each) => each.hide === hide.id),
      view,
      leather,
    ),
  };
}

function sceneLayers(request: PictureRequest, scene: Scene): Layer[] {
  const { hide, layout, view, style } = request;
  const layer = (name: string, elements: readonly DrawingElement[]): Layer => ({ name, elements });
  const layers = [
    layer('hide', hideGround(hide, view)),
    layer('unsure edges', unsureEdges(scene.marks, view, style)),
    layer(
      'offcuts',
      scene.offcuts.flatMap(({ hide: offcut, region }) =>
        offcutPattern([region], [transformCurve(view.toDrawing, offcut.outline)], style.grow),
      ),
    ),
    layer('pieces', pieceGrounds(scene.pieces)),
    layer(
      'photo',
      hidePhoto(hide, request.pictures?.get(hide.id), view, layout === undefined ? 'bare' : 'pieces'),
    ),
    layer('zones', zoneLines(scene.zones, style)),
    layer('direction', directionLines(hide, view, style)),
    layer('flaws', flawPatterns(scene.flaws, style)),
    layer('hide edge', hideEdge(hide, view, style)),
    layer('cut away', gonePieces(scene.gone, style)),
    layer('cut lines', pieceLines(scene.pieces, style)),
    layer('lanes', layout === undefined ? [] : laneLines(layout, hide.id, view, style)),
    layer('rough cuts', layout === undefined ? [] : roughCutLines(layout, hide.id, view, style)),
    layer('freeing cut', freeingCutLines(scene.freeing, style)),
    ...(request.extra?.layers ?? []),
    layer('labels', sceneLabels(request, scene)),
  ];
  return layers.filter((each) => each.elements.length > 0);
}

function sceneLabels(request: PictureRequest, scene: Scene): GroupElement[] {
  const { fonts, style, within } = request;
  const reserved = request.extra?.reserved ?? [];
  const pieceShapes = scene.pieces.map((piece) => shapeOf(piece.region));
  const flawShapes = scene.flaws.flatMap((flaw) => flaw.seen.map((region) => shapeOf(region)));
  const edges = [shapeOf(scene.leather, true), ...workShapes(request, scene)];
  const space: FreeSpace = {
    within,
    shapes: [...edges, ...pieceShapes, ...flawShapes],
    taken: [...reserved],
    leaders: [],
  };
  const pieces = scene.pieces.map((piece) => piece.region);
  const flaws = flawShapes.map((shape) => shape.region);
  const workLines = workSegments(request, scene).map(([from, to]) => segmentBox(from, to));
  const desk: LabelDesk = { fonts, style, space, leather: scene.leather, pieces, flaws, workLines, reserved };
  const lines = [...edges, ...pieces.map((region) => shapeOf(region, true)), ...flawShapes];
  return [
    ...labelPieces(desk, scene.pieces),
    ...labelNamed(desk, request.extra),
    ...labelOffcuts(desk, scene, request.units),
    ...labelWork(desk, request, scene),
    ...labelReadings(desk, request.hide, request.view),
    ...labelFlaws(desk, scene.flaws, lines),
    ...labelZones(desk, scene.zones, space.shapes),
    ...labelEnds(desk, request),
  ];
}

function labelNamed(desk: LabelDesk, extra: PictureExtra | undefined): GroupElement[] {
  return (extra?.named ?? []).flatMap(({ text, at, isClose }) =>
    labelThing(desk, isClose === true ? [] : desk.space.shapes, {
      name: `label ${text}`,
      text,
      targets: [at],
      colour: INK,
      face: 'narrow bold',
    }),
  );
}

/** Lines of the work that no label may lie across: the freeing cut, first cuts of lanes, rough cuts, test pieces. */
function workShapes(request: PictureRequest, scene: Scene): Shape[] {
  const { hide, layout, view } = request;
  const blocks = layout?.roughCuts.filter((block) => block.hide === hide.id) ?? [];
  return [
    // There and back again: a ring without breadth, of which only the edge counts.
    ...workSegments(request, scene).map(([from, to]) =>
      shapeOf({ outer: [from, to, from], openings: [] }, true),
    ),
    ...[...blocks, ...swatchesOn(request)].map(({ outline }) =>
      shapeOf({ outer: ringOnDrawing(view.toDrawing, outline), openings: [] }, true),
    ),
  ];
}

function swatchesOn({ hide, layout }: PictureRequest): readonly Swatch[] {
  return (layout?.swatches ?? []).filter((swatch) => swatch.hide === hide.id);
}

/** The freeing cut, and the first cuts of lanes. */
function workSegments(request: PictureRequest, scene: Scene): (readonly [Point, Point])[] {
  const { hide, layout, view } = request;
  const lanes = (layout?.lanes ?? []).filter((lane) => lane.hide === hide.id);
  return [
    ...scene.freeing,
    ...lanes.map((lane): readonly [Point, Point] => {
      const [from, to] = movePoints(view.toDrawing, [lane.from, lane.to]);
      return [from!, to!];
    }),
  ];
}

function labelOffcuts(desk: LabelDesk, scene: Scene, units: LengthUnit): GroupElement[] {
  return scene.offcuts.flatMap(({ hide: offcut, region }, i) => {
    const own = hideShape(offcut);
    const area = regionArea(own);
    const unit = areaUnit(area);
    const size = sizeWords(...boxSides(own), units);
    const words = `offcut, ${size}, ${areaFigure(area, unit)} ${unit} (${areaFigure(area, 'ft²')} ft²)`;
    return labelThing(desk, desk.space.shapes, {
      name: `label offcut ${i + 1}`,
      text: words,
      targets: [ringCentroid(region.outer)],
      colour: INK,
      face: 'narrow bold',
      home: largestRegion(subtractRegions([region], desk.flaws)) ?? region,
    });
  });
}

function labelWork(desk: LabelDesk, request: PictureRequest, scene: Scene): GroupElement[] {
  const { hide, layout, view } = request;
  if (layout === undefined) return [];
  const lanes = layout.lanes.filter((lane) => lane.hide === hide.id);
  const blocks = layout.roughCuts.filter((block) => block.hide === hide.id);
  const stepOf = (id: string): string => {
    const step = layout.cuttingOrder.find((each) => each.of === id);
    return step === undefined ? '' : `${step.number}  `;
  };
  return [
    ...lanes.flatMap((lane) =>
      labelThing(desk, desk.space.shapes, {
        name: `label lane ${lane.id}`,
        text: `${stepOf(lane.id)}lane ${lane.id}, first cut`,
        targets: movePoints(view.toDrawing, [lane.from, lane.to]),
        colour: INK,
      }),
    ),
    ...blocks.flatMap((block) =>
      labelThing(desk, desk.space.shapes, {
        name: `label rough cut ${block.id}`,
        text: `${stepOf(block.id)}rough cut ${block.id}${block.preparation === undefined ? '' : `, ${block.preparation}`}`,
        targets: movePoints(view.toDrawing, someOf(block.outline)),
        colour: INK,
      }),
    ),
    ...swatchesOn(request).flatMap(({ id, outline }) =>
      labelThing(desk, desk.space.shapes, {
        name: `label swatch ${id}`,
        text: id,
        targets: movePoints(view.toDrawing, outline),
        colour: INK,
        home: { outer: ringOnDrawing(view.toDrawing, outline), openings: [] },
      }),
    ),
    ...(scene.freeing.length === 0
      ? []
      : labelThing(desk, desk.space.shapes, {
          name: 'label freeing cut',
          text: 'freeing cut',
          targets: scene.freeing.flatMap((stretch) => stretch),
          colour: INK,
        })),
  ];
}

const MOST_TARGETS = 12;

/** Up to twelve of the points, evenly spread. */
function someOf(points: readonly Point[]): Point[] {
  const step = Math.ceil(points.length / MOST_TARGETS);
  return points.filter((_, i) => i % step === 0);
}

function labelEnds(desk: LabelDesk, request: PictureRequest): GroupElement[] {
  const { backbone } = request.hide;
  if (backbone === undefined) return [];
  const points = movePoints(request.view.toDrawing, backbone);
  const ends = [
    ['head', points[0]!],
    ['tail', points[points.length - 1]!],
  ] as const;
  return ends.flatMap(([text, target]) =>
    labelThing(desk, desk.space.shapes, {
      name: `label ${text}`,
      text,
      targets: [target],
      face: 'narrow bold',
    }),
  );
}

function sceneContent(request: PictureRequest, scene: Scene): Omit<PictureContent, 'hasReadings'> {
  const { hide, layout } = request;
  return {
    pieces: scene.pieces,
    gone: scene.gone,
    flaws: scene.flaws,
    zones: scene.zones,
    hasBackbone: hide.backbone !== undefined,
    hasStrokes: hide.tightness.length > 0,
    hasLanes: layout?.lanes.some((lane) => lane.hide === hide.id) === true,
    hasRoughCuts: layout?.roughCuts.some((block) => block.hide === hide.id) === true,
    hasSwatches: layout?.swatches.some((swatch) => swatch.hide === hide.id) === true,
    hasFreeingCut: scene.freeing.length > 0,
    hasOffcuts: scene.offcuts.length > 0,
    hasUnsureEdges: scene.marks.unsure.length > 0,
  };
}
