import { LeatherError, parsePitchMm, stitchMarks, stitchRuleFor } from '@hidebound/leather';
import type { PatternPiece, StitchMarks, StitchRule, StitchTool } from '@hidebound/leather';
import { CliError } from './cli-error.js';
import { textOption } from './command-context.js';
import type { OptionValues } from './command-context.js';

/** How stitch lines are to be marked, from the command line; undefined where no pitch was given. */
export function stitchRuleFrom(options: OptionValues): StitchRule | undefined {
  const pitch = textOption(options, 'pitch');
  if (pitch === undefined) return undefined;
  return stitchRuleFor(
    { pitchMm: pitchFrom(pitch), with: textOption(options, 'with') as StitchTool },
    undefined,
  );
}

function pitchFrom(text: string): number {
  try {
    return parsePitchMm(/^[\d.]+$/.test(text) ? Number(text) : text);
  } catch (error) {
    if (!(error instanceof LeatherError)) throw error;
    throw new CliError('bad-use', `--pitch: ${error.message}`);
  }
}

/** A stitch line of a pattern's piece with its holes. */
export interface MarkedLine {
  readonly line: string;
  readonly marks: StitchMarks;
}

/** The stitch lines of a piece, each by itself: which are sewn together, only an order says. */
export function markedLines({ piece }: PatternPiece, rule: StitchRule): readonly MarkedLine[] {
  return piece.stitchLines.map(({ name, curve }, i) => {
    const line = name ?? `stitch line ${i + 1}`;
    return { line, marks: stitchMarks(curve, rule, { piece: piece.name, line }) };
  });
}
