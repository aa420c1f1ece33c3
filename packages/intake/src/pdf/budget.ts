import { IntakeError } from '../error.js';
import { MAX_SEGMENTS } from '../limits.js';
import {
  MAX_CLIP_WORK,
  MAX_FORMS_DRAWN,
  MAX_LINES_KEPT,
  MAX_OPERATORS,
  MAX_SEGMENTS_DRAWN,
} from './limits.js';

/** What reading has cost so far, over all pages. */
export interface Budget {
  readonly file: string;
  operators: number;
  forms: number;
  segmentsDrawn: number;
  segmentsKept: number;
  linesKept: number;
  clipWork: number;
}

export function newBudget(file: string): Budget {
  return { file, operators: 0, forms: 0, segmentsDrawn: 0, segmentsKept: 0, linesKept: 0, clipWork: 0 };
}

export function spendOperators(budget: Budget, count: number): void {
  budget.operators += count;
  if (budget.operators <= MAX_OPERATORS) return;
  throw new IntakeError('pdf-too-many-operators', { limit: MAX_OPERATORS }, { file: budget.file });
}

export function spendForm(budget: Budget): void {
  if (++budget.forms <= MAX_FORMS_DRAWN) return;
  throw new IntakeError('pdf-too-many-forms', { limit: MAX_FORMS_DRAWN }, { file: budget.file });
}

export function spendDrawn(budget: Budget, segments: number): void {
  budget.segmentsDrawn += segments;
  if (budget.segmentsDrawn <= MAX_SEGMENTS_DRAWN) return;
  throw new IntakeError('path-too-long', { limit: MAX_SEGMENTS_DRAWN }, { file: budget.file });
}

export function spendKept(budget: Budget, segments: number): void {
  budget.segmentsKept += segments;
  if (budget.segmentsKept > MAX_SEGMENTS) {
    throw new IntakeError('path-too-long', { limit: MAX_SEGMENTS }, { file: budget.file });
  }
  if (++budget.linesKept <= MAX_LINES_KEPT) return;
  throw new IntakeError('too-many-elements', { limit: MAX_LINES_KEPT }, { file: budget.file });
}

export function spendClipWork(budget: Budget, work: number): void {
  budget.clipWork += work;
  if (budget.clipWork <= MAX_CLIP_WORK) return;
  throw new IntakeError('pdf-clip-too-heavy', {}, { file: budget.file });
}
