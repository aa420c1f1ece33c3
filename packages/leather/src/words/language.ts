import type { DiagnosticPlace } from '../model/diagnostic.js';
import type { SuitRemark } from '../suit/suit-model.js';
import type { SentenceTable } from './sentence.js';

/** A language that findings are told in. */
export interface SentenceLanguage {
  /** Sentences by code; where one is missing, the English one is told. */
  readonly sentences: SentenceTable;
  /** Where something is, in words: "order.yaml, line 12". */
  readonly place: (place: DiagnosticPlace) => string;
  /** What is said about a piece on a hide, without a full stop. */
  readonly suitRemark: (remark: SuitRemark) => string;
}
