import type { DiagnosticPlace } from './model/diagnostic.js';
import type { SentenceCode } from './words/catalogue.js';
import type { SentenceParams } from './words/sentence.js';

/** What went wrong in this package; the code is the contract, the words are not. */
export type LeatherErrorCode =
  | SentenceCode
  | 'empty-file'
  | 'not-text'
  | 'too-large'
  | 'bad-json'
  | 'bad-yaml'
  | 'wrong-format'
  | 'newer-version'
  | 'unknown-key'
  | 'bad-value'
  | 'bad-unit'
  | 'ambiguous-value'
  | 'duplicate'
  | 'impossible-piece'
  | 'bad-outline'
  | 'unknown-piece'
  | 'no-pieces'
  | 'unknown-line'
  | 'unknown-leather'
  | 'unknown-thread'
  | 'unknown-hide'
  | 'no-hides'
  | 'bad-count'
  | 'unknown-article'
  | 'layout-mismatch';

/** The one error of this package: bad input, in one plain sentence. */
export class LeatherError extends Error {
  readonly code: LeatherErrorCode;
  /** Where it is wrong: the file, the line, the key path, the place on the hide, as far as they are known. */
  readonly place?: DiagnosticPlace;
  /** The code of its sentence in the catalogue, where several sentences have one code of error. */
  readonly said: string;
  /** What that sentence is filled in with, so that it can be written in another language. */
  readonly params: SentenceParams;

  constructor(
    code: LeatherErrorCode,
    message: string,
    place?: DiagnosticPlace,
    { said, params }: { readonly said: string; readonly params: SentenceParams } = { said: code, params: {} },
  ) {
    super(message);
    this.name = 'LeatherError';
    this.code = code;
    this.said = said;
    this.params = params;
    if (place !== undefined) this.place = place;
  }
}
