import type { Affine } from '@hidebound/geometry';
import type { DrawnGroup, DrawnLine, DrawnSource } from '../drawing/drawn-line.js';
import type { Findings } from '../findings.js';
import type { Budget } from './budget.js';
import { pageClip } from './clip-shape.js';
import type { PageFrame } from './page-frame.js';
import type { PdfLayers, PdfPicture } from './pdfjs.js';
import { initialState } from './state.js';
import type { GraphicsState } from './state.js';
import type { PlacedRun } from './text-lines.js';
import { TEXT_START } from './text-runs.js';
import type { TextMatrices } from './text-runs.js';

/** What is told once of the whole file: elements by what they are. */
export interface Tally {
  readonly white: string[];
  readonly thin: string[];
}

/** Everything that is carried along while the operators of a page are followed. */
export interface PageWalk {
  /** From 1. */
  readonly number: number;
  readonly frame: PageFrame;
  readonly layers: PdfLayers;
  readonly findings: Findings;
  readonly budget: Budget;
  readonly tally: Tally;
  /** Gives every layer of every page a number of its own. */
  readonly groupKeys: Map<string, number>;
  readonly lines: DrawnLine[];
  readonly runs: PlacedRun[];
  /** None unless they are asked for when the file is opened. */
  readonly pictures: PlacedPicture[];
  state: GraphicsState;
  readonly saved: GraphicsState[];
  /** How many states were saved when each open form or group began, and whether it is a soft mask. */
  readonly forms: { readonly saved: number; readonly isMask: boolean }[];
  readonly marks: Mark[];
  readonly hiddenLayers: Set<string>;
  pendingClip: 'nonzero' | 'evenodd' | undefined;
  text: TextMatrices;
  paths: number;
  texts: number;
}

/** A picture that the page shows, by its id or with its pixels. */
export interface PlacedPicture {
  readonly picture: string | PdfPicture;
  /** From the unit square, y up, to the page's frame, mm. */
  readonly toMm: Affine;
}

/** Marked content that is open: a layer, or anything else. */
export interface Mark {
  readonly group?: DrawnGroup;
  readonly isHidden: boolean;
}

export type PageWalkStart = Pick<
  PageWalk,
  'number' | 'frame' | 'layers' | 'findings' | 'budget' | 'tally' | 'groupKeys'
>;

export function startWalk(start: PageWalkStart): PageWalk {
  const { widthMm, heightMm, toMm } = start.frame;
  return {
    ...start,
    lines: [],
    runs: [],
    pictures: [],
    state: initialState(toMm, pageClip(widthMm, heightMm)),
    saved: [],
    forms: [],
    marks: [],
    hiddenLayers: new Set(),
    pendingClip: undefined,
    text: TEXT_START,
    paths: 0,
    texts: 0,
  };
}

/** Neither layers that are switched off nor shapes of soft masks are seen. */
export function isUnseen(walk: PageWalk): boolean {
  return walk.marks.some(({ isHidden }) => isHidden) || walk.forms.some(({ isMask }) => isMask);
}

const NO_LABELS: DrawnSource['labels'] = { given: [], classes: [], data: {} };

/** An element of the page with the layers around it. PDF names no elements, so it is called by its number. */
export function sourceOf({ number, marks }: PageWalk, kind: 'path' | 'text', count: number): DrawnSource {
  const groups = marks.flatMap(({ group }) => (group === undefined ? [] : [group])).reverse();
  return { name: `${kind} ${count} on page ${number}`, labels: NO_LABELS, groups };
}
