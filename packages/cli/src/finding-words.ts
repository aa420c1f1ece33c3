import { sentenceFor } from '@hidebound/leather';
import type { Diagnostic } from '@hidebound/leather';
import { SENTENCE_TABLES } from './cli-sentences.js';
import { placePrefix } from './describe-failure.js';

/** A finding as one sentence with its place in front. */
export function sentenceOf(diagnostic: Diagnostic): string {
  const { code, params, place } = diagnostic;
  const words = sentenceFor({ code, params }, SENTENCE_TABLES);
  const prefix = placePrefix(place);
  return prefix === '' ? words : `${prefix}: ${words}`;
}

/** Findings as lines for a person, gravest first. */
export function findingLines(diagnostics: readonly Diagnostic[]): readonly string[] {
  const order = ['error', 'warning', 'note'] as const;
  return order.flatMap((severity) =>
    diagnostics
      .filter((diagnostic) => diagnostic.severity === severity)
      .map((diagnostic) => `${severity}: ${sentenceOf(diagnostic)}`),
  );
}
