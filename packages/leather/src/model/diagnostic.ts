import type { Point } from '@hidebound/geometry';

export type Severity = 'note' | 'warning' | 'error';

/** Where something is: a file, a line or element in it, a place on a shape. Each part is optional. */
export interface DiagnosticPlace {
  readonly file?: string;
  readonly line?: number;
  /** An element's id, a key path such as "articles[0].pieces[2].count", a piece's or hide's name. */
  readonly at?: string;
  /** In mm, in the frame of the file or hide. */
  readonly point?: Point;
}

/** A finding as data; its sentence comes from the catalogue (`sentenceFor`). */
export interface Diagnostic {
  readonly code: string;
  readonly severity: Severity;
  readonly params: Readonly<Record<string, string | number>>;
  readonly place?: DiagnosticPlace;
}
