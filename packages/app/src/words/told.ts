import type { DiagnosticPlace } from '@hidebound/leather';

/** What a package found, as data: what a sentence in another language is made of. */
export interface Finding {
  readonly code: string;
  readonly params: Readonly<Record<string, string | number>>;
  readonly place?: DiagnosticPlace;
  /** Whose words they are, where one code has several; those of drawing and of the app itself have but few codes. */
  readonly of?: 'leather' | 'intake' | 'suit remark' | 'render' | 'app';
}

/** What is told of a finding: its English sentence, as its package has it, and what other languages say it from. */
export interface Told {
  readonly sentence: string;
  /** Absent for what no package says: a fault of the program, of the browser. */
  readonly finding?: Finding;
}

/** Writes findings in a language; undefined for what it has no sentence for. */
export type WriteFinding = (finding: Finding) => string | undefined;

/** What a thrown error tells; the packages' own, and those of workers, can be told in any language. */
export function toldError(error: unknown): Told {
  if (!(error instanceof Error)) return { sentence: String(error) };
  const sentence = error.message;
  const { code, said, params, place, failure, reason } = error as Partial<ThrownByUs>;
  if (error.name === 'WorkError' && failure !== undefined) return failure;
  if (error.name === 'StoreError' && reason !== undefined)
    return { sentence, finding: { of: 'app', code: reason, params: {} } };
  if (error.name === 'RenderError' && code !== undefined)
    return { sentence, finding: { of: 'render', code, params: {} } };
  if (params === undefined || code === undefined) return { sentence };
  const where = place === undefined ? {} : { place };
  switch (error.name) {
    case 'LeatherError':
      return { sentence, finding: { of: 'leather', code: said ?? code, params, ...where } };
    case 'IntakeError':
      return { sentence, finding: { of: 'intake', code, params, ...where } };
    default:
      return { sentence };
  }
}

/** Errors are told apart by their names, so that no package is loaded for it. */
interface ThrownByUs extends Finding {
  readonly said: string;
  readonly failure: Told;
  readonly reason: string;
}
