import type { CutDrawing } from '../cutfile/cut-drawing.js';
import { CUT_LAYERS } from '../cutfile/layers.js';
import { DXF_TEXT_ARCS_MM, entityOf } from './entities.js';
import { asciiText, pairsToText } from './pairs.js';
import { releaseTwelve } from './release-12.js';
import { releaseTwoThousand } from './release-2000.js';

/** R12 (AC1009), which every cutter reads, and R2000 (AC1015), the first with units and light polylines that programs agree on. */
export const DXF_VERSIONS = ['R12', 'R2000'] as const;
export type DxfVersion = (typeof DXF_VERSIONS)[number];

/**
 * The cut file as ASCII DXF in mm, y up from the frame's lower left corner; entities in the order of cutting, a layer
 * for each kind. Lines, arcs and circles stay such, what has several parts is a polyline with bulges; cubics become
 * arcs within 0.005 mm. The same drawing gives the same bytes everywhere.
 */
export function writeDxf(drawing: CutDrawing, version: DxfVersion = 'R12'): string {
  const kinds = [...new Set(drawing.paths.map(({ kind }) => kind))];
  const parts: DxfParts = {
    title: asciiText(drawing.title),
    widthMm: drawing.widthMm,
    heightMm: drawing.heightMm,
    layers: kinds.map((kind) => ({
      name: layerName(CUT_LAYERS[kind].name),
      colour: CUT_LAYERS[kind].dxfColour,
    })),
    entities: drawing.paths.flatMap(({ kind, curves }) =>
      curves.map((curve) => ({
        layer: layerName(CUT_LAYERS[kind].name),
        entity: entityOf(curve, drawing.heightMm, kind === 'text' ? DXF_TEXT_ARCS_MM : undefined),
      })),
    ),
  };
  return pairsToText(version === 'R12' ? releaseTwelve(parts) : releaseTwoThousand(parts));
}

/** What either version is written from. */
export interface DxfParts {
  readonly title: string;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly layers: readonly { readonly name: string; readonly colour: number }[];
  readonly entities: readonly LayerEntity[];
}

export interface LayerEntity {
  readonly layer: string;
  readonly entity: ReturnType<typeof entityOf>;
}

/** Capitals, digits, hyphen and underscore: what R12 allows. */
function layerName(name: string): string {
  return name.toUpperCase().replaceAll('-', '_');
}
