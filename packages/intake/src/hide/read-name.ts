import { FLAW_KINDS, ZONE_KINDS } from '@hidebound/leather';
import type { Effect, FlawKind, Looks, Side, ZoneKind } from '@hidebound/leather';
import type { Labels } from '../drawing/drawn-line.js';
import { nameWords } from '../roles/read-name.js';

/** What a line of a traced hide is. */
export type MarkKind =
  'outline' | 'opening' | 'flaw' | 'zone' | 'backbone' | 'tightness' | 'unsure' | 'reading' | 'ignore';

/** Words that say what a line is; the first row that a name matches decides. */
export const MARK_WORDS: readonly { readonly mark: MarkKind; readonly words: readonly string[] }[] = [
  { mark: 'ignore', words: ['ignore', 'guide', 'guides', 'text', 'photo', 'reference', 'scale'] },
  { mark: 'flaw', words: ['flaw', 'flaws'] },
  { mark: 'zone', words: ['zone', 'zones'] },
  { mark: 'unsure', words: ['unsure'] },
  { mark: 'backbone', words: ['backbone', 'spine'] },
  { mark: 'tightness', words: ['tightness', 'tight', 'stretch'] },
  { mark: 'reading', words: ['thickness', 'reading', 'readings'] },
  { mark: 'outline', words: ['outline', 'hide', 'edge'] },
  { mark: 'opening', words: ['opening', 'openings', 'hole', 'holes'] },
];

/** What one name, or its `data-*` attributes, say of a mark. */
export interface MarkWords {
  readonly mark?: MarkKind;
  readonly flawKind?: FlawKind;
  readonly zoneKind?: ZoneKind;
  readonly effect: Partial<Effect>;
  readonly side?: Side;
}

/** Reads a name such as "flaw scar looks B", "brand never", "zone belly" or "scar-3". */
export function readMarkName(name: string): MarkWords {
  const words = nameWords(name);
  const text = ` ${words.join(' ')} `;
  const flawKind = FLAW_KINDS.find((kind) => text.includes(` ${kind} `) || text.includes(` ${kind}s `));
  const zoneKind = ZONE_KINDS.find((kind) => words.includes(kind));
  const named = MARK_WORDS.find((row) => row.words.some((word) => words.includes(word)))?.mark;
  // "hole" alone is an opening; "flaw hole" is a flaw of that kind.
  const mark = named ?? (flawKind === undefined ? (zoneKind === undefined ? undefined : 'zone') : 'flaw');
  return {
    ...(mark === undefined ? {} : { mark }),
    ...(flawKind === undefined ? {} : { flawKind }),
    ...(zoneKind === undefined ? {} : { zoneKind }),
    effect: effectOfWords(text),
    ...(words.includes('flesh') ? { side: 'flesh' as const } : {}),
  };
}

function effectOfWords(text: string): Partial<Effect> {
  const looks = / looks ([abc]) /.exec(text)?.[1]?.toUpperCase() as Looks | undefined;
  const plain = / hidden /.test(text) ? 'C' : / anywhere /.test(text) ? 'A' : undefined;
  const strength = / weak /.test(text) ? 'weak' : / sound /.test(text) ? 'sound' : undefined;
  const given = looks ?? plain;
  return {
    ...(given === undefined ? {} : { looks: given }),
    ...(strength === undefined ? {} : { strength }),
    ...(/ never | void /.test(text) ? { isVoid: true } : {}),
  };
}

/** What `data-mark`, `data-kind`, `data-looks`, `data-strength`, `data-void` and `data-side` say, as if in a name. */
export function nameOfData({ data }: Labels): string {
  const words = [data['mark'], data['kind'], data['strength'], data['side']];
  if (data['looks'] !== undefined) words.push(`looks ${data['looks']}`);
  if (data['void'] !== undefined && !/^(no|false|0)$/i.test(data['void'])) words.push('never');
  return words.filter((word) => word !== undefined).join(' ');
}
