/** What went wrong in this package; the code is the contract, the words are not. */
export type RenderErrorCode =
  'bad-drawing' | 'bad-font' | 'unknown-hide' | 'unknown-piece' | 'empty-hide' | 'nothing-to-draw';

/** The one error of this package. */
export class RenderError extends Error {
  readonly code: RenderErrorCode;

  constructor(code: RenderErrorCode, message: string) {
    super(message);
    this.name = 'RenderError';
    this.code = code;
  }
}
