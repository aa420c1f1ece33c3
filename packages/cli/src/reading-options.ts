import { parseLengthMm } from '@hidebound/leather';
import type { PatternReading } from '@hidebound/leather';
import { CliError } from './cli-error.js';
import { numberOption, textOption } from './command-context.js';
import type { OptionValues } from './command-context.js';

/** How a drawing is to be read, from the command line. */
export function readingFrom(options: OptionValues): Omit<PatternReading, 'file'> {
  const dpi = numberOption(options, 'dpi');
  const scale = numberOption(options, 'scale');
  const known = textOption(options, 'knownLength');
  return {
    roles: [],
    ...(dpi === undefined ? {} : { dpi }),
    ...(scale === undefined ? {} : { scale }),
    ...(known === undefined ? {} : { knownLength: parseKnownLength(known) }),
  };
}

function parseKnownLength(text: string): { readonly element: string; readonly mm: number } {
  const equals = text.lastIndexOf('=');
  const mm = equals < 1 ? undefined : lengthOrNothing(text.slice(equals + 1));
  if (mm === undefined || !(mm > 0)) {
    throw new CliError(
      'bad-use',
      `--known-length ${JSON.stringify(text)} is not an id and its length; write it as ruler=100mm.`,
    );
  }
  return { element: text.slice(0, equals), mm };
}

function lengthOrNothing(text: string): number | undefined {
  try {
    return parseLengthMm(/^[\d.]+$/.test(text) ? Number(text) : text);
  } catch {
    return undefined;
  }
}
