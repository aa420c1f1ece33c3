import type { Hide } from '@hidebound/leather';
import { CliError } from './cli-error.js';

/** The hide that `--hide` names, by its id or by its number among the layout's hides. Throws `bad-use` for any other. */
export function askedHide(hides: readonly Hide[], asked: string): Hide {
  const found = hides.find(({ id }) => id === asked) ?? hides[Number(asked) - 1];
  if (found !== undefined) return found;
  const known = hides.map(({ id }, i) => `${i + 1} (${id})`).join(', ');
  throw new CliError('bad-use', `The layout has no hide "${asked}"; give --hide one of: ${known}.`);
}
