import { LeatherError, parseAreaMm2, parseThickness } from '@hidebound/leather';
import type { TraceOptions } from '@hidebound/intake/photo';
import { CliError } from '../cli-error.js';
import { textOption } from '../command-context.js';
import type { OptionValues } from '../command-context.js';

/** What the command line says of the leather itself. Fails with a CliError `bad-use`. */
export function leatherFrom(options: OptionValues): Pick<TraceOptions, 'leather' | 'lot' | 'invoicedMm2'> {
  const [tannage, colour, lot] = ['tannage', 'colour', 'lot'].map((name) => textOption(options, name));
  const thickness = quantity(options, 'thickness', (text) => parseThickness(bareNumber(text)));
  const invoicedMm2 = quantity(options, 'checkArea', parseAreaMm2);
  return {
    leather: {
      ...(tannage === undefined ? {} : { tannage }),
      ...(colour === undefined ? {} : { colour }),
      ...(thickness === undefined ? {} : { thickness }),
    },
    ...(lot === undefined ? {} : { lot }),
    ...(invoicedMm2 === undefined ? {} : { invoicedMm2 }),
  };
}

const FLAGS = { thickness: '--thickness', checkArea: '--check-area' } as const;

/** A bare number is mm. */
function bareNumber(text: string): string | number {
  return /^[\d.]+$/.test(text) ? Number(text) : text;
}

function quantity<Value>(
  options: OptionValues,
  name: keyof typeof FLAGS,
  parse: (text: string) => Value,
): Value | undefined {
  const text = textOption(options, name);
  if (text === undefined) return undefined;
  try {
    return parse(text);
  } catch (error) {
    if (!(error instanceof LeatherError)) throw error;
    throw new CliError('bad-use', `${FLAGS[name]}: ${error.message}`);
  }
}
