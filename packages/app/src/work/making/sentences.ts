import { INTAKE_SENTENCES } from '@hidebound/intake';
import type { Diagnostic } from '@hidebound/leather';
import type { Told } from '../../words/told.js';
import { told } from '../told.js';

const TABLES = [INTAKE_SENTENCES];
const GRAVEST_FIRST = ['error', 'warning', 'note'] as const;

/** Findings as they are told, gravest first, each with the place within its file where it has one. */
export function toldInOrder(findings: readonly Diagnostic[]): Told[] {
  return GRAVEST_FIRST.flatMap((wanted) =>
    findings.filter(({ severity }) => severity === wanted).map(toldWithPlace),
  );
}

/** A place that the sentence itself names is not named twice. */
export function toldWithPlace({ code, params, place }: Diagnostic): Told {
  const bare = told({ code, params }, TABLES);
  const at = place?.at;
  return at === undefined || bare.sentence.includes(at)
    ? bare
    : told({ code, params, place: { at } }, TABLES);
}
