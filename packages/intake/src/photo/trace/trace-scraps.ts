import type { Diagnostic } from '@hidebound/leather';
import { IntakeError } from '../../error.js';
import { newFindings } from '../../findings.js';
import { readScraps } from '../cards/read-scraps.js';
import type { Scrap } from '../cards/read-scraps.js';
import { findOutlines } from '../outline/find-outlines.js';
import type { Photo } from '../photo.js';
import type { StraightPicture } from '../straight/straight-picture.js';
import type { Vision } from '../vision/vision.js';
import { tellStrayHints } from './hints-for-photo.js';
import { lookAtLeather } from './look-at-leather.js';
import { stageTeller } from './stages.js';
import type { TraceOptions, TraceReport } from './trace-options.js';

/** What is to be known of a photo of scraps; `id` is what their numbers follow. */
export interface ScrapsAsked extends Omit<TraceOptions, 'pictureFile' | 'otherSide' | 'raking' | 'isMoved'> {
  readonly pictureFileOf: (id: string) => string;
  /** The number of the first scrap, 1 if absent. */
  readonly firstNumber?: number;
}

export interface ScrapsRead {
  readonly scraps: readonly Scrap[];
  /** All of them as they lie, floor mm. */
  readonly picture: StraightPicture;
  readonly references: TraceReport['references'];
  readonly diagnostics: readonly Diagnostic[];
}

/** More than lie apart on a table that one photo shows. */
const MOST_SCRAPS = 60;

/** Every piece of leather in a photo as an offcut of its own, numbered in reading order. Throws `IntakeError`. */
export function traceScraps(photos: readonly Photo[], asked: ScrapsAsked, vision: Vision): ScrapsRead {
  const [first] = photos;
  if (first === undefined) throw new IntakeError('no-photo', {}, {});
  const findings = newFindings(first.file);
  const { pictureFileOf, firstNumber, ...known } = asked;
  const options: TraceOptions = { ...known, pictureFile: pictureFileOf(asked.id) };
  const tools = { vision, findings, stage: stageTeller(options, first.file) };
  tellStrayHints(asked.hints, photos, findings);
  const looked = lookAtLeather(photos, options, tools);
  tools.stage('outline');
  const { pieces } = findOutlines(looked.picture, { ...looked, most: MOST_SCRAPS }, vision, findings);
  const scraps = readScraps(pieces, {
    picture: looked.picture,
    sideUp: asked.sideUp,
    idPrefix: asked.id,
    ...(firstNumber === undefined ? {} : { firstNumber }),
    scaledBy: looked.floor.scaledBy,
    takenFrom: photos.map(({ file }) => file),
    errorWithin: looked.errorWithin,
    pictureFileOf,
    ...(asked.leather === undefined ? {} : { leather: asked.leather }),
    ...(asked.lot === undefined ? {} : { lot: asked.lot }),
  });
  return {
    scraps,
    picture: looked.picture,
    references: looked.floor.references.map(({ name, residualMm }) => ({ name, residualMm })),
    diagnostics: findings.diagnostics,
  };
}
