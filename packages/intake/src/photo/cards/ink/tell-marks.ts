import { tell } from '../../../findings.js';
import type { Findings } from '../../../findings.js';
import type { DrawnMarks, DrawnRole } from './drawn-marks.js';

export interface NamedMarks {
  readonly name: string;
  readonly marks: DrawnMarks;
}

interface Meaning {
  readonly solid?: DrawnRole;
  readonly dashed?: DrawnRole;
}

/** What was guessed of drawn lines, once of the whole picture; what the user said is no guess. */
export function tellMarks(all: readonly NamedMarks[], meaning: Meaning, findings: Findings): void {
  if (meaning.solid === undefined) {
    tellCount(
      all,
      ({ solid }) => solid.length,
      'card-lines-guessed',
      { how: 'solid', role: 'fold' },
      findings,
    );
  }
  if (meaning.dashed === undefined) {
    tellCount(
      all,
      ({ dashed }) => dashed.length,
      'card-lines-guessed',
      { how: 'dashed', role: 'stitch' },
      findings,
    );
  }
  tellCount(all, ({ notches }) => notches.length, 'card-notches-guessed', {}, findings);
  tellCount(all, ({ arrows }) => arrows.length, 'card-direction-guessed', {}, findings);
  for (const { name, marks } of all) {
    if (marks.arrows.length < 2) continue;
    tell(
      findings,
      'warning',
      'card-several-arrows',
      { piece: name },
      { at: name, point: marks.arrows[0]!.from },
    );
  }
  tellCount(all, ({ leftOver }) => leftOver, 'card-marks-left', {}, findings);
}

/** Pieces named in one sentence. */
const NAMED = 4;

function tellCount(
  all: readonly NamedMarks[],
  countOf: (marks: DrawnMarks) => number,
  code: string,
  params: Readonly<Record<string, string>>,
  findings: Findings,
): void {
  const some = all.filter(({ marks }) => countOf(marks) > 0);
  if (some.length === 0) return;
  const count = some.reduce((sum, { marks }) => sum + countOf(marks), 0);
  const names = some.slice(0, NAMED).map(({ name }) => name);
  const pieces = some.length > NAMED ? `${names.join(', ')} and others` : names.join(', ');
  tell(findings, 'note', code, { ...params, count, pieces });
}
