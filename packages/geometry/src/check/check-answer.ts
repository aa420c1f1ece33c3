import type { NestAnswer, NestProblem } from '../types/problem.js';
import { buildContext } from './context.js';
import { findAngleFaults } from './rule-angle.js';
import { findCountFaults } from './rule-count.js';
import { findEdgeFaults } from './rule-edge.js';
import { splitSaneAnswer } from './rule-finite-answer.js';
import { findProblemFaults } from './rule-finite-problem.js';
import { findGapFaults } from './rule-gap.js';
import { findLaneFaults } from './rule-lane.js';
import { findLockedFaults } from './rule-locked.js';
import { findLooksFaults } from './rule-looks.js';
import { findMirrorFaults, findPairFaults } from './rule-mirror.js';
import { findRoughCutFaults } from './rule-rough-cut.js';
import { findSetFaults, findSheetFaults } from './rule-set.js';
import { findThicknessFaults } from './rule-thickness.js';
import { findVoidFaults } from './rule-void.js';
import { findZoneFaults } from './rule-zone.js';
import { markAccepted } from './violation.js';
import type { FoundViolation } from './violation.js';

/** Every rule of a sane problem and answer, in the order in which violations are listed. */
const RULES = [
  findGapFaults,
  findEdgeFaults,
  findVoidFaults,
  findLooksFaults,
  findZoneFaults,
  findAngleFaults,
  findThicknessFaults,
  findMirrorFaults,
  findPairFaults,
  findCountFaults,
  findSetFaults,
  findSheetFaults,
  findLockedFaults,
  findLaneFaults,
  findRoughCutFaults,
] as const;

/**
 * Proves an answer to a nesting problem, from the rounded numbers as files hold them, and lists every rule that
 * it breaks (`RuleName` in `types/problem.ts`; each rule's file says what it holds). It forgives 2 µm of distance
 * or depth and 0.002° of angle, for the rounding of stored numbers, and nothing more.
 *
 * A problem that is not sane itself (rule `finite`) is told alone: nothing can be proven of it. Of the answer,
 * what is not sane is told and left out of the other rules. Rules that a fixed placement lists as accepted are
 * listed all the same, with `accepted: true`; for a rule between two copies either one's word will do.
 *
 * @returns the violations, in the order of rules and of the answer's placements; empty: proven.
 */
export function checkAnswer(problem: NestProblem, answer: NestAnswer): readonly FoundViolation[] {
  const problemFaults = findProblemFaults(problem);
  if (problemFaults.length > 0) return markAccepted(problemFaults, []);
  const sane = splitSaneAnswer(problem, answer);
  const context = buildContext(problem, sane.answer);
  const findings = [...sane.findings, ...RULES.flatMap((findFaults) => findFaults(context))];
  return markAccepted(findings, problem.fixed);
}
