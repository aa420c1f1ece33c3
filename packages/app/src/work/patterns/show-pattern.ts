import { INTAKE_SENTENCES } from '@hidebound/intake';
import type { PatternRead, ReadPage } from '@hidebound/intake';
import type { Diagnostic, PatternReading } from '@hidebound/leather';
import { toldError } from '../../words/told.js';
import type { KnownPattern, PatternFinding, PatternShown, ShownPage } from '../patterns-tasks.js';
import { told } from '../told.js';
import type { KeptPatterns } from './kept-patterns.js';

export interface ShowInput {
  readonly pattern: KnownPattern;
  readonly reading?: PatternReading;
}

/** Reads one pattern to be looked at. What can't be read at all comes back as a failure, not as an error. */
export async function showPattern(
  kept: KeptPatterns,
  { pattern, reading }: ShowInput,
): Promise<PatternShown> {
  const bytes = kept.bytesOf(pattern);
  const options = { file: pattern.path, ...(reading === undefined ? {} : { reading }) };
  try {
    const found = await kept.read(bytes, options);
    const { diagnostics, pages, ...read } = found;
    const shown = pages === undefined ? read : { ...read, pages: pages.map(pageOf) };
    return { read: shown, findings: diagnostics.map((each) => findingOf(each, found)) };
  } catch (error) {
    if (!(error instanceof Error)) throw error;
    const { code } = error as { code?: unknown };
    return {
      findings: [],
      failure: { code: typeof code === 'string' ? code : error.name, ...toldError(error) },
    };
  }
}

function pageOf({ lines: _lines, marks: _marks, ...page }: ReadPage): ShownPage {
  return page;
}

/** A finding as a sentence, with the pieces that it is about. */
export function findingOf(diagnostic: Diagnostic, { pieces }: Pick<PatternRead, 'pieces'>): PatternFinding {
  return {
    tone: diagnostic.severity,
    ...told(diagnostic, [INTAKE_SENTENCES]),
    pieces: piecesNamedBy(diagnostic, pieces),
  };
}

/** By name in what it says, or by the element that it lies at; what a file with one piece says is about that one. */
function piecesNamedBy({ params, place }: Diagnostic, pieces: PatternRead['pieces']): readonly string[] {
  if (pieces.length === 1) return [pieces[0]!.piece.name];
  const said = Object.values(params).join(' ');
  return pieces
    .filter(
      ({ piece, source }) =>
        said.includes(piece.name) || (source.element !== undefined && source.element === place?.at),
    )
    .map(({ piece }) => piece.name);
}
