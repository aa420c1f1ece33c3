import type { LineRole } from '@hidebound/leather';
import { FILLER_WORDS, LEADING_ROLES, ROLE_PHRASES } from './words.js';

const ROLE_BY_PHRASE: ReadonlyMap<string, LineRole> = new Map(
  ROLE_PHRASES.flatMap(({ role, phrases }) => phrases.map((phrase) => [phrase, role] as const)),
);

const LONGEST_PHRASE = 4;

/** The words of a name in small letters: at spaces, signs, digits, and where a capital follows a small letter. */
export function nameWords(name: string): string[] {
  return name
    .replace(/(\p{Ll})(\p{Lu})/gu, '$1 $2')
    .toLowerCase()
    .split(/[^\p{L}]+/u)
    .filter((word) => word !== '');
}

/** The role of a name all of whose words are of one role or fillers: "Stitch lines", "cut_3"; else nothing. */
export function roleOfWholeName(name: string): LineRole | undefined {
  const words = nameWords(name);
  const roles = new Set<LineRole>();
  for (let i = 0; i < words.length;) {
    const found = phraseAt(words, i);
    if (found !== undefined) {
      roles.add(found.role);
      i += found.length;
    } else if (FILLER_WORDS.has(words[i]!)) i++;
    else return undefined;
  }
  return roles.size === 1 ? [...roles][0] : undefined;
}

/** The role that a name's first words give where more may follow: "stitch-left", "fold 2 of 3". */
export function roleOfLeadingWords(name: string): LineRole | undefined {
  const found = phraseAt(nameWords(name), 0);
  return found !== undefined && LEADING_ROLES.has(found.role) ? found.role : undefined;
}

function phraseAt(words: readonly string[], at: number): { role: LineRole; length: number } | undefined {
  for (let length = Math.min(LONGEST_PHRASE, words.length - at); length > 0; length--) {
    const role = ROLE_BY_PHRASE.get(words.slice(at, at + length).join(' '));
    if (role !== undefined) return { role, length };
  }
  return undefined;
}
