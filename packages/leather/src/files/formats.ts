import type * as v from 'valibot';
import { referenceSheetsFileSchema } from '../reference/reference-sheets-file.js';
import type { FormatKind } from './envelope.js';
import { hideFileSchema } from './hide-file.js';
import { jobFileSchema } from './job-bundle-file.js';
import { layoutFileSchema } from './layout-file.js';
import { hideBody } from './schema/hide-schema.js';
import { money, partialEffect, thicknessRange } from './schema/marks.js';
import { layablePiece, piece } from './schema/piece-schema.js';
import { hintsFileSchema } from './schema/written-hints.js';
import { resolvedOrder, stitchRule } from './schema/resolved-order-schema.js';
import { curve, point, polyline, region, ring } from './schema/shapes.js';
import { articleFileSchema, orderFileSchema } from './schema/written-order.js';
import { writtenDirection, writtenPiece } from './schema/written-piece.js';
import {
  writtenCutSize,
  writtenGoods,
  writtenOffer,
  writtenTannage,
  writtenWants,
} from './schema/written-rules.js';
import { writtenStitch } from './schema/written-stitch.js';
import { workshopEffect, workshopFileSchema, workshopPart } from './schema/written-workshop.js';
import { stockJournalFileSchema } from './stock-journal-file.js';

/** A file format as it is published. */
export interface PublishedFormat {
  readonly kind: FormatKind;
  readonly title: string;
  /** What the file is called. */
  readonly fileName: string;
  /** What it is for, in a sentence or two. */
  readonly purpose: string;
  readonly writtenBy: 'people' | 'Hidebound';
  readonly schema: v.GenericSchema;
}

export const PUBLISHED_FORMATS: readonly PublishedFormat[] = [
  {
    kind: 'hide',
    title: 'Hide',
    fileName: '*.hide.json',
    purpose:
      'One hide or skin, or a cut of it, seen from the grain side: its edge, marks, leather, price and photo.',
    writtenBy: 'Hidebound',
    schema: hideFileSchema,
  },
  {
    kind: 'article',
    title: 'Article',
    fileName: '*.article.yaml',
    purpose: 'What one kind of thing is made of. Orders name it, so that a repeat order is one line.',
    writtenBy: 'people',
    schema: articleFileSchema,
  },
  {
    kind: 'order',
    title: 'Order',
    fileName: '*.order.yaml',
    purpose: 'What is to be made, of which hides, and how it is cut.',
    writtenBy: 'people',
    schema: orderFileSchema,
  },
  {
    kind: 'layout',
    title: 'Layout',
    fileName: '*.layout.json',
    purpose:
      'Where every piece lies on which hide. With the hide files it names, it is all that is needed to check the layout.',
    writtenBy: 'Hidebound',
    schema: layoutFileSchema,
  },
  {
    kind: 'workshop',
    title: 'Workshop',
    fileName: 'workshop.yaml',
    purpose: 'Your own defaults. What is left out keeps the built-in value.',
    writtenBy: 'people',
    schema: workshopFileSchema,
  },
  {
    kind: 'stock-journal',
    title: 'Stock journal',
    fileName: 'stock.journal.json',
    purpose: 'What was taken from which hide, so that it can be undone.',
    writtenBy: 'Hidebound',
    schema: stockJournalFileSchema,
  },
  {
    kind: 'job',
    title: 'Job bundle',
    fileName: '*.job.json',
    purpose: 'One file with all files of a job, to hand on or to keep.',
    writtenBy: 'Hidebound',
    schema: jobFileSchema,
  },
  {
    kind: 'photo-hints',
    title: 'Hints on photos',
    fileName: '*.hints.yaml',
    purpose:
      'What you know of the photos of one hide: where leather and floor are, where the edge runs, what gives the scale. Places are pixels of the photo, counted from its top left corner as your picture viewer shows it.',
    writtenBy: 'people',
    schema: hintsFileSchema,
  },
  {
    kind: 'reference-sheets',
    title: 'Reference sheets',
    fileName: 'reference-sheets.json',
    purpose:
      'What your printer made of the reference sheets that give photos their scale: how long their two lines came out. "hidebound markers --measured" writes it.',
    writtenBy: 'Hidebound',
    schema: referenceSheetsFileSchema,
  },
];

/** Parts that several formats share, by the name that the published schemas and the documentation give them. */
export const SHARED_PARTS: Readonly<Record<string, v.GenericSchema>> = {
  point,
  polyline,
  ring,
  region,
  curve,
  money,
  thicknessRange,
  partialEffect,
  hideBody,
  pieceShape: piece,
  layablePiece,
  writtenDirection,
  writtenPiece,
  writtenStitch,
  workshopPart,
  workshopEffect,
  workshopGoods: writtenGoods,
  workshopTannage: writtenTannage,
  workshopCut: writtenCutSize,
  workshopOffer: writtenOffer,
  writtenWants,
  stitchRule,
  resolvedOrder,
};
