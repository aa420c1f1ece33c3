import { curveFromPolyline } from '@hidebound/geometry';
import type { Hide } from '@hidebound/leather';

export interface PanelAsked {
  readonly id: string;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly thicknessMm?: number;
  /** The side along which the leather stretches least, where it is known. */
  readonly least?: 'across' | 'down';
}

/** A strip of leather stays away from the edges by this share of a side. */
const STROKE_MARGIN = 0.1;

/** A plain rectangle of leather as it is bought. */
export function panelHide({ id, widthMm, heightMm, thicknessMm, least }: PanelAsked): Hide {
  const corners = [
    { x: 0, y: 0 },
    { x: widthMm, y: 0 },
    { x: widthMm, y: heightMm },
    { x: 0, y: heightMm },
  ];
  const [fromX, toX] = [widthMm * STROKE_MARGIN, widthMm * (1 - STROKE_MARGIN)];
  const [fromY, toY] = [heightMm * STROKE_MARGIN, heightMm * (1 - STROKE_MARGIN)];
  const [midX, midY] = [widthMm / 2, heightMm / 2];
  const strokes = {
    across: [
      { x: fromX, y: midY },
      { x: toX, y: midY },
    ],
    down: [
      { x: midX, y: fromY },
      { x: midX, y: toY },
    ],
  };
  return {
    id,
    cut: 'panel',
    outline: curveFromPolyline(corners, true),
    openings: [],
    tightness: least === undefined ? [] : [strokes[least]],
    zones: [],
    flaws: [],
    candidates: [],
    unsureEdges: [],
    leather: {
      readings: [],
      ...(thicknessMm === undefined ? {} : { thickness: { minMm: thicknessMm, maxMm: thicknessMm } }),
    },
    area: { measuredMm2: widthMm * heightMm },
    state: 'on hand',
  };
}
