/** What went wrong in this package; the code is the contract, the words are not. */
export type GeometryErrorCode =
  'empty-shape' | 'not-closed' | 'bad-argument' | 'unsupported' | 'worker-failed';

/** The one error of this package. */
export class GeometryError extends Error {
  readonly code: GeometryErrorCode;

  constructor(code: GeometryErrorCode, message: string) {
    super(message);
    this.name = 'GeometryError';
    this.code = code;
  }
}
