/** What went wrong in this package; the code is the contract, the words are not. */
export type LeatherErrorCode =
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
  | 'unknown-hide'
  | 'no-hides'
  | 'bad-count'
  | 'unknown-article'
  | 'layout-mismatch';

/** The one error of this package: bad input, in one plain sentence. */
export class LeatherError extends Error {
  readonly code: LeatherErrorCode;

  constructor(code: LeatherErrorCode, message: string) {
    super(message);
    this.name = 'LeatherError';
    this.code = code;
  }
}
