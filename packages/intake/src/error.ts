import type { DiagnosticPlace } from '@hidebound/leather';
import type { DXF_REFUSALS } from './dxf/words.js';
import type { PAGES_REFUSALS } from './pages/words.js';
import type { PDF_REFUSALS } from './pdf/words.js';
import type { PHOTO_CAMERA_REFUSALS } from './photo/camera/words.js';
import type { PHOTO_CARDS_REFUSALS } from './photo/cards/words.js';
import type { PHOTO_DECODE_REFUSALS } from './photo/decode/words.js';
import type { PHOTO_MARKS_REFUSALS } from './photo/marks/words.js';
import type { PHOTO_OUTLINE_REFUSALS } from './photo/outline/words.js';
import type { PHOTO_TRACE_REFUSALS } from './photo/trace/words.js';
import type { SentenceParams } from './sentence.js';
import { INTAKE_SENTENCES } from './sentences.js';

/** What made a file unreadable; the code is the contract, the words are not. */
export type IntakeErrorCode =
  | keyof typeof PDF_REFUSALS
  | keyof typeof PAGES_REFUSALS
  | keyof typeof DXF_REFUSALS
  | keyof typeof PHOTO_DECODE_REFUSALS
  | keyof typeof PHOTO_CAMERA_REFUSALS
  | keyof typeof PHOTO_OUTLINE_REFUSALS
  | keyof typeof PHOTO_MARKS_REFUSALS
  | keyof typeof PHOTO_CARDS_REFUSALS
  | keyof typeof PHOTO_TRACE_REFUSALS
  | 'absurd-coordinate'
  | 'bad-encoding'
  | 'bad-hide'
  | 'bad-number'
  | 'bad-reading'
  | 'binary-file'
  | 'compressed-file'
  | 'empty-file'
  | 'entity-bomb'
  | 'external-entity'
  | 'known-length-missing'
  | 'no-outline'
  | 'not-svg'
  | 'not-well-formed'
  | 'path-too-long'
  | 'too-deep'
  | 'too-large'
  | 'too-many-clones'
  | 'too-many-elements'
  | 'truncated-file'
  | 'use-cycle';

/** The one error of this package. Its message is one sentence: file, place, what is wrong, what would be right. */
export class IntakeError extends Error {
  readonly code: IntakeErrorCode;
  readonly params: SentenceParams;
  readonly place: DiagnosticPlace;

  constructor(code: IntakeErrorCode, params: SentenceParams, place: DiagnosticPlace) {
    super(`${placeText(place)}: ${INTAKE_SENTENCES[code]!(params)}`);
    this.name = 'IntakeError';
    this.code = code;
    this.params = params;
    this.place = place;
  }
}

/** "flap.svg, line 12, #outline, at 10.5, 20 mm". */
export function placeText(place: DiagnosticPlace): string {
  const parts: string[] = [];
  if (place.file !== undefined) parts.push(place.file);
  if (place.line !== undefined) parts.push(`line ${place.line}`);
  if (place.at !== undefined) parts.push(place.at);
  if (place.point !== undefined) parts.push(`at ${round1(place.point.x)}, ${round1(place.point.y)} mm`);
  return parts.join(', ');
}

function round1(n: number): number {
  return Math.round(n * 10) / 10;
}
