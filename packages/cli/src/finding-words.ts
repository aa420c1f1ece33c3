import { sentenceFor } from '@hidebound/leather';
import type { Diagnostic, DiagnosticPlace } from '@hidebound/leather';
import { SENTENCE_TABLES } from './cli-sentences.js';
import { placePrefix } from './describe-failure.js';

/** A finding as one sentence with its place in front. */
export function sentenceOf(diagnostic: Diagnostic): string {
  const { code, params, place } = diagnostic;
  const words = sentenceFor({ code, params }, SENTENCE_TABLES);
  const prefix = placePrefix(isNamedIn(words, place) ? undefined : place);
  return prefix === '' ? words : `${prefix}: ${words}`;
}

/** A place without a file that the sentence itself names is not named twice. */
function isNamedIn(words: string, place: DiagnosticPlace | undefined): boolean {
  return (
    place !== undefined && place.file === undefined && place.at !== undefined && words.includes(place.at)
  );
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
