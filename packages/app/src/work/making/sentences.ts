import { INTAKE_SENTENCES } from '@hidebound/intake';
import { sentenceFor } from '@hidebound/leather';
import type { Diagnostic } from '@hidebound/leather';

const GRAVEST_FIRST = ['error', 'warning', 'note'] as const;

/** Findings as sentences, gravest first, each with the place within its file where it has one. */
export function sentencesOf(findings: readonly Diagnostic[]): string[] {
  return GRAVEST_FIRST.flatMap((wanted) =>
    findings.filter(({ severity }) => severity === wanted).map(sentenceOf),
  );
}

export function sentenceOf({ code, params, place }: Diagnostic): string {
  const words = sentenceFor({ code, params }, [INTAKE_SENTENCES]);
  const at = place?.at;
  return at === undefined || words.includes(at) ? words : `${at}: ${words}`;
}
