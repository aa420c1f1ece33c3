import { listWords, parseFoundFlaw, quoteValue, withFoundFlaw } from '@hidebound/leather';
import { LeatherError } from '@hidebound/leather';
import type { Flaw, FlawFrame, Layout, NamedHide } from '@hidebound/leather';
import { CliError } from '../cli-error.js';
import type { OptionValues } from '../command-context.js';
import { textOption, textsOption } from '../command-context.js';
import { sentenceOf } from '../finding-words.js';

export interface HidesWithFlaws {
  readonly hides: readonly NamedHide[];
  /** Those that have a flaw more. */
  readonly changed: readonly NamedHide[];
  readonly flaws: readonly { readonly hide: string; readonly flaw: Flaw }[];
}

/** The layout's hides with the flaws that were told of on the command line. */
export function foundFlaws(
  layout: Layout,
  named: readonly NamedHide[],
  options: OptionValues,
): HidesWithFlaws {
  const texts = textsOption(options, 'flaw');
  const asked = textOption(options, 'hide');
  if (texts.length === 0) {
    if (asked !== undefined)
      throw new CliError('bad-use', '--hide says where a flaw is; give it with --flaw.');
    return { hides: named, changed: [], flaws: [] };
  }
  const id = hideOfFlaws(layout, asked);
  const from = { frame: textOption(options, 'from') as FlawFrame, useFrom: layout.order.useFrom };
  const { file, hide } = named.find((each) => each.hide.id === id)!;
  let now = hide;
  const flaws = texts.map((text) => {
    const added = withFoundFlaw(now, parseFoundFlaw(text), from);
    now = added.hide;
    return { hide: id, flaw: added.flaw };
  });
  const changed = { file, hide: now };
  return {
    hides: named.map((each) => (each.hide.id === id ? changed : each)),
    changed: [changed],
    flaws,
  };
}

function hideOfFlaws({ hides }: Layout, asked: string | undefined): string {
  const ids = hides.map(({ id }) => id);
  if (asked === undefined) {
    if (ids.length === 1) return ids[0]!;
    throw refusal('flaw-which-hide', { hides: listWords(ids, 'and') });
  }
  if (ids.includes(asked)) return asked;
  throw refusal('flaw-no-such-hide', { asked: quoteValue(asked), hides: listWords(ids, 'and') });
}

function refusal(
  code: 'flaw-which-hide' | 'flaw-no-such-hide',
  params: Readonly<Record<string, string>>,
): LeatherError {
  return new LeatherError(code, sentenceOf({ code, severity: 'error', params }));
}
