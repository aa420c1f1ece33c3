import type { AnswerScore } from './score.js';

/** A score as numbers to be compared one after the other, lower being better; as many for every answer to a problem. */
export function scoreEntries(score: AnswerScore, sheets: number): number[] {
  const opened = Array.from({ length: sheets }, (_, i) => score.opened[i] ?? sheets);
  return [
    ...score.missed,
    ...score.wholeSets.map((whole) => -whole),
    -score.value,
    score.opened.length,
    ...opened,
    score.usedUpMm2,
    -score.largestLeftoverMm2,
  ];
}
