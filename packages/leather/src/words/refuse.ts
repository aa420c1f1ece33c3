import { LeatherError } from '../leather-error.js';
import type { LeatherErrorCode } from '../leather-error.js';
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

/** The same where several sentences of the catalogue are one code of error: "unknown-piece" has many. */
export function leatherErrorAs<Said extends SentenceCode>(
  code: LeatherErrorCode,
  said: Said,
  params: ParamsOf<typeof SENTENCES, Said>,
  place?: DiagnosticPlace,
): LeatherError {
  return errorOf(code, said, params as SentenceParams, place);
}

/** The same for a code and parameters that are known only when running. */
export function refusal(code: SentenceCode, params: SentenceParams, place?: DiagnosticPlace): LeatherError {
  return errorOf(code, code, params, place);
}

function errorOf(
  code: LeatherErrorCode,
  said: SentenceCode,
  params: SentenceParams,
  place: DiagnosticPlace | undefined,
): LeatherError {
  const sentence = sentenceFor({ code: said, params, ...(place === undefined ? {} : { place }) });
  return new LeatherError(code, sentence, place, { said, params });
}
