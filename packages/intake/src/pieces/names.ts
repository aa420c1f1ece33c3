import type { DrawnLine, Labels } from '../drawing/drawn-line.js';
import { placeOf, tell } from '../findings.js';
import type { Findings } from '../findings.js';
import { isSizeAlone, nameWithSize } from '../roles/read-size.js';
import { nameWords, roleOfLeadingWords, roleOfWholeName } from '../roles/read-name.js';
import type { PieceParts } from './parts.js';
import { readingNumbers } from './reading-order.js';

/** Words that drawing programs make names from: they say nothing of a piece. */
const PROGRAM_WORDS = new Set([
  'a',
  'circle',
  'clone',
  'compound',
  'container',
  'contour',
  'cls',
  'cut',
  'curve',
  'document',
  'drawing',
  'element',
  'ellipse',
  'g',
  'group',
  'id',
  'image',
  'item',
  'layer',
  'line',
  'master',
  'object',
  'outline',
  'page',
  'path',
  'pattern',
  'patterns',
  'piece',
  'pieces',
  'polygon',
  'polyline',
  'rect',
  'rectangle',
  'root',
  'shape',
  'sheet',
  'slide',
  'st',
  'svg',
  'symbol',
  'text',
  'tspan',
  'unnamed',
  'use',
  'xmlid',
]);

/** A text within a piece may be a note of many words; a name is short. */
const LONGEST_TEXT_NAME = 40;

/** True for a name that a person gave: not a word for a role, not what a program makes up. */
export function isMeaningfulName(name: string): boolean {
  const words = nameWords(name);
  if (words.every((word) => PROGRAM_WORDS.has(word))) return false;
  return roleOfWholeName(name) === undefined;
}

/** Ids are more often made up: those of one letter and a number say nothing either. */
function isMeaningfulId(id: string): boolean {
  const letters = nameWords(id).join('');
  return letters.length > 1 && !/^id[-_]?[0-9a-f]{6,}/i.test(id) && isMeaningfulName(id);
}

function givenName(labels: Labels, size: string | undefined): string | undefined {
  const { data } = labels;
  // Whoever writes data-piece means a piece's name, even one that a program could have made up.
  if (data['piece'] !== undefined && data['piece'] !== '') return data['piece'];
  for (const name of [data['name'], ...labels.given]) {
    if (name === undefined || name === '' || !isMeaningfulName(name)) continue;
    if (size === undefined || !isSizeAlone(name, size)) return name;
  }
  return undefined;
}

function idName({ id }: Labels, size: string | undefined): string | undefined {
  if (id === undefined || !isMeaningfulId(id)) return undefined;
  return size !== undefined && isSizeAlone(id, size) ? undefined : id;
}

/** What a line may be called: the name that it was given, or a telling id. Role words count: "stitch-left" is a name. */
export function lineName({ labels }: DrawnLine['source']): string | undefined {
  const [given] = [labels.data['name'], ...labels.given].filter((name) => name !== undefined && name !== '');
  if (given !== undefined) return given;
  const { id } = labels;
  if (id === undefined) return undefined;
  return isMeaningfulId(id) || roleOfLeadingWords(id) !== undefined ? id : undefined;
}

/** How many of the pieces lie in each group. */
export function countInGroups(pieces: readonly PieceParts[]): Map<number, number> {
  const counts = new Map<number, number>();
  for (const { outline } of pieces) {
    for (const { key } of outline.line.source.groups) counts.set(key, (counts.get(key) ?? 0) + 1);
  }
  return counts;
}

/**
 * Whose labels speak of the piece: clones that draw it, the element itself, then the groups around it that hold this
 * one piece, innermost first.
 */
export function labelsAbout(piece: PieceParts, counts: ReadonlyMap<number, number>): AboutPiece {
  const { source } = piece.outline.line;
  const alone = source.groups.filter(({ key }) => counts.get(key) === 1);
  return {
    clones: alone.filter(({ isClone }) => isClone).map(({ labels }) => labels),
    own: source.labels,
    groups: alone.filter(({ isClone }) => !isClone).map(({ labels }) => labels),
  };
}

export interface AboutPiece {
  readonly clones: readonly Labels[];
  readonly own: Labels;
  readonly groups: readonly Labels[];
}

/**
 * The pieces' names: of a clone; given to the element; given to, or the id of, a group that holds this piece alone; the element's
 * id; a text within; else piece-1, piece-2 … as one reads. Of equal names, all but the first get a number. Pieces of one
 * of several sizes have it in their names.
 */
export function namePieces(
  pieces: readonly PieceParts[],
  size: string | undefined,
  findings: Findings,
): string[] {
  const counts = countInGroups(pieces);
  const numbers = readingNumbers(pieces.map(({ outline }) => outline.box));
  const taken = new Set<string>();
  const wordy: string[] = [];
  const names = pieces.map((piece, i) => {
    const { clones, own, groups } = labelsAbout(piece, counts);
    const saysMore = (text: string) => size === undefined || !isSizeAlone(text, size);
    const given =
      firstName(clones, size) ??
      givenName(own, size) ??
      firstName(groups, size) ??
      idName(own, size) ??
      piece.texts.find(
        (text) => text.length <= LONGEST_TEXT_NAME && isMeaningfulName(text) && saysMore(text),
      );
    const bare = given ?? `piece-${numbers[i]!}`;
    const name = size === undefined ? bare : nameWithSize(bare, size);
    const unique = uniqueName(name, taken);
    taken.add(unique);
    if (unique !== name) {
      tell(findings, 'warning', 'name-used-twice', { name, unique }, placeOf(piece.outline.line.source));
    }
    if (given === undefined && piece.texts.some((text) => text.length > LONGEST_TEXT_NAME))
      wordy.push(unique);
    return unique;
  });
  tellWordy(wordy, findings);
  return names;
}

/** Pieces named in one sentence. */
const NAMED_PIECES = 4;

/** Pieces without a name whose only texts are too long for one. */
function tellWordy(names: readonly string[], findings: Findings): void {
  if (names.length === 0) return;
  const shown = names.slice(0, NAMED_PIECES).join(', ');
  const pieces = names.length > NAMED_PIECES ? `${shown} and others` : shown;
  tell(findings, 'note', 'text-too-long-for-name', { count: names.length, pieces, limit: LONGEST_TEXT_NAME });
}

function firstName(all: readonly Labels[], size: string | undefined): string | undefined {
  return all
    .map((labels) => givenName(labels, size) ?? idName(labels, size))
    .find((name) => name !== undefined);
}

function uniqueName(name: string, taken: ReadonlySet<string>): string {
  if (!taken.has(name)) return name;
  for (let n = 2; ; n++) {
    const candidate = `${name}-${n}`;
    if (!taken.has(candidate)) return candidate;
  }
}
