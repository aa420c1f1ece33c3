import { LeatherError } from '../leather-error.js';
import type { DiagnosticPlace } from '../model/diagnostic.js';
import { sentenceFor } from './catalogue.js';
import type { SentenceCode, SENTENCES } from './catalogue.js';
import type { ParamsOf, SentenceParams } from './sentence.js';

/** The error for a code of the catalogue, its parameters held to what the sentence asks for. */
export function leatherError<Code extends SentenceCode>(
  code: Code,
  params: ParamsOf<typeof SENTENCES, Code>,
  place?: DiagnosticPlace,
): LeatherError {
  return refusal(code, params as SentenceParams, place);
}

/** The same for a code and parameters that are known only when running. */
export function refusal(code: SentenceCode, params: SentenceParams, place?: DiagnosticPlace): LeatherError {
  const sentence = sentenceFor({ code, params, ...(place === undefined ? {} : { place }) });
  return new LeatherError(code, sentence, place);
}
