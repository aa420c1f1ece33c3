import type { CopyRef, Lane, NestAnswer, NestProblem, Placement, RoughCut } from '../types/problem.js';
import { isOrdinal, isSaneAngle, isSaneDistance, isSaneLength, isSanePoint, isSaneRing } from './sane.js';
import { copyRef } from './violation.js';
import type { Finding } from './violation.js';

/** The part of an answer of which more can be proven, and what is wrong with the rest. */
export interface SaneAnswer {
  readonly answer: NestAnswer;
  readonly findings: readonly Finding[];
}

/**
 * Rule `finite`, for the answer: every number finite and of a sane size, sets and copies numbered from 1, every
 * item and sheet known. What fails is told once and left out of the other rules.
 */
export function splitSaneAnswer(problem: NestProblem, answer: NestAnswer): SaneAnswer {
  const items = new Set(problem.items.map(({ id }) => id));
  const sheets = new Set(problem.sheets.map(({ id }) => id));
  const findings: Finding[] = [];
  const isSaneCopy = (copy: CopyRef): boolean =>
    items.has(copy.item) && isOrdinal(copy.set) && isOrdinal(copy.copy);
  const keep = <T>(list: readonly T[], isSane: (one: T) => boolean, toFinding: (one: T) => Finding): T[] =>
    list.filter((one) => {
      const sane = isSane(one);
      if (!sane) findings.push(toFinding(one));
      return sane;
    });
  const ofCopy = (copy: CopyRef): Finding => ({ rule: 'finite', at: copyRef(copy) });
  const ofPart = (part: Lane | RoughCut): Finding => ({ rule: 'finite', other: part.id, sheet: part.sheet });
  const sane = {
    ...answer,
    placements: keep(
      answer.placements,
      (placement) => isSaneCopy(placement) && sheets.has(placement.sheet) && hasSaneNumbers(placement),
      (placement) => ({ ...ofCopy(placement), sheet: placement.sheet }),
    ),
    unplaced: keep(answer.unplaced, isSaneCopy, ofCopy),
    lanes: keep(answer.lanes, isSaneLane, ofPart),
    roughCuts: keep(
      answer.roughCuts,
      ({ outline, marginMm }) => isSaneRing(outline) && isSaneDistance(marginMm),
      ofPart,
    ),
  };
  return { answer: sane, findings };
}

function hasSaneNumbers(placement: Placement): boolean {
  return isSaneLength(placement.x) && isSaneLength(placement.y) && isSaneAngle(placement.rotationDeg);
}

function isSaneLane(lane: Lane): boolean {
  return (
    isSanePoint(lane.from) &&
    isSanePoint(lane.to) &&
    isSaneDistance(lane.kerfMm) &&
    lane.rows.every((row) => isSaneDistance(row.widthMm))
  );
}
