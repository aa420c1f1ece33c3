import type { Diagnostic, MeasuredBars, PatternPiece, PhotoHints } from '@hidebound/leather';
import { IntakeError } from '../../error.js';
import { newFindings } from '../../findings.js';
import type { Findings } from '../../findings.js';
import { findReferences } from '../camera/find-references.js';
import { papersOf } from '../camera/papers-of.js';
import { solveFloor } from '../camera/solve-floor.js';
import { readCards } from '../cards/read-cards.js';
import type { CardOptions } from '../cards/read-cards.js';
import { scanPicture } from '../cards/scan-picture.js';
import type { Photo } from '../photo.js';
import { straighten } from '../straight/straighten.js';
import type { StraightPicture } from '../straight/straight-picture.js';
import type { Vision } from '../vision/vision.js';
import { hintsForPhoto } from './hints-for-photo.js';

/** What is to be known of a photo or scan of card templates. */
export interface CardsAsked {
  /** Pixels to the inch of a scan, as the user says. */
  readonly dpi?: number;
  /** The same as the file says; sheets in the picture count more. */
  readonly statedDpi?: number;
  readonly names?: readonly string[];
  readonly barsOf?: (sheet: number) => MeasuredBars | undefined;
  readonly hints?: PhotoHints;
}

/** Pieces from cards, with what gave them their size. */
export interface CardsRead {
  readonly pieces: readonly PatternPiece[];
  readonly diagnostics: readonly Diagnostic[];
  /** In words: "2 reference sheets", "300 px to the inch". */
  readonly scaledBy: string;
}

/** Card or paper templates as pieces, from a photo with reference sheets or from a scan. Throws `IntakeError`. */
export function traceCards(photo: Photo, asked: CardsAsked, vision: Vision): CardsRead {
  const findings = newFindings(photo.file);
  const scaled = scaledPicture(photo, asked, vision, findings);
  const options: CardOptions = {
    papers: scaled.papers,
    ...(asked.names === undefined ? {} : { names: asked.names }),
  };
  const pieces = readCards(scaled.picture, options, vision, findings);
  return { pieces, diagnostics: findings.diagnostics, scaledBy: scaled.by };
}

interface Scaled extends Pick<Required<CardOptions>, 'papers'> {
  readonly picture: StraightPicture;
  readonly by: string;
}

/** What a person says counts most, then what lies in the picture, then what the file says of itself. */
function scaledPicture(photo: Photo, asked: CardsAsked, vision: Vision, findings: Findings): Scaled {
  if (asked.dpi !== undefined) return scan(photo, asked.dpi);
  const stated = hintsForPhoto(asked.hints, photo)?.reference;
  const references = findReferences(photo, vision);
  if (references.markers.length === 0 && stated === undefined) {
    if (asked.statedDpi !== undefined) return scan(photo, asked.statedDpi);
    throw new IntakeError('cards-without-scale', {}, { file: photo.file });
  }
  const { barsOf } = asked;
  const seen = stated === undefined ? { references } : { references, stated };
  const floor = solveFloor([seen], barsOf === undefined ? {} : { barsOf }, findings);
  const picture = straighten([photo], floor, {}, vision);
  return { picture, papers: papersOf(floor), by: floor.scaledBy };
}

function scan(photo: Photo, dpi: number): Scaled {
  return { picture: scanPicture(photo, dpi), papers: [], by: `${Math.round(dpi)} px to the inch` };
}
