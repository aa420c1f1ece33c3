/** A request that is not done, as it is answered: a status of HTTP, and JSON with a code and one plain sentence. */
export class TableRefusal extends Error {
  override readonly name = 'TableRefusal';
  readonly status: number;
  readonly code: string;
  /** What else the answer holds. */
  readonly data: Readonly<Record<string, unknown>>;

  constructor(status: number, code: string, sentence: string, data: Readonly<Record<string, unknown>> = {}) {
    super(sentence);
    this.status = status;
    this.code = code;
    this.data = data;
  }
}
