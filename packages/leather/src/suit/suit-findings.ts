import type { Diagnostic } from '../model/diagnostic.js';
import type { FindingsInput, Suited } from './findings-input.js';
import { goodsFindings } from './goods-findings.js';
import { hideFindings } from './hide-findings.js';
import { pieceFindings } from './piece-findings.js';

/** What a master would say before the first cut: on the goods, on the hides, on single pieces. */
export function suitFindings(input: FindingsInput, suited: Suited): Diagnostic[] {
  return [...pieceFindings(input, suited), ...goodsFindings(input, suited), ...hideFindings(input, suited)];
}
