import { listWords } from '@hidebound/leather';
import type {
  Diagnostic,
  LayoutViolation,
  PieceCopy,
  ResolvedOrder,
  ResolvedPiece,
  UnplacedCopy,
} from '@hidebound/leather';

/** Decimals of a measured length or angle in a sentence: 0.1 µm shows which side of the limit it is on. */
const MEASURED_DECIMALS = 4;

/** "front" of saddlebag, set 2, copy 1, mirrored. */
export function copyWords(copy: PieceCopy): string {
  return `"${copy.piece}" of ${copy.article}, set ${copy.set}, copy ${copy.copy}${copy.mirrored ? ', mirrored' : ''}`;
}

/** A broken rule as a finding: which piece, and why, in the catalogue's words. */
export function violationFinding(violation: LayoutViolation, file: string): Diagnostic {
  const { rule, at, other, part, hide, place, measured, required, accepted } = violation;
  const party = typeof other === 'string' ? partyWords(other, rule) : other && copyWords(other);
  const who = at === undefined ? (party ?? 'The layout') : copyWords(at);
  const params: Record<string, string | number> = {
    what: part === undefined ? who : `The ${part} of ${who}`,
  };
  if (party !== undefined && at !== undefined) params['other'] = party;
  if (measured !== undefined) params['measured'] = shorten(measured);
  if (required !== undefined) params['required'] = shorten(required);
  return {
    code: `${accepted ? 'accepted' : 'broken'}-${rule}`,
    severity: accepted ? 'note' : 'error',
    params,
    place: {
      file,
      ...(hide === undefined ? {} : { at: `hide ${hide}` }),
      ...(place === undefined ? {} : { point: place }),
    },
  };
}

/** What begins the id of a thing that is no piece of the order, and what such a thing is called. */
const PARTIES: readonly (readonly [string, string])[] = [
  ['flaw:', 'flaw '],
  ['zone:', 'zone '],
  ['candidate:', 'possible flaw '],
  ['unsure-edge:', 'unsure stretch of the edge '],
  ['swatch/', 'test piece '],
  ['spoiled/', 'spoiled piece '],
];

/** The other party, where it is no piece: "flaw scar-1", "the lane straps". */
function partyWords(id: string, rule: LayoutViolation['rule']): string {
  if (rule === 'lane') return `the lane "${id}"`;
  if (rule === 'rough-cut') return `the rough cut "${id}"`;
  if (id === 'cut') return 'this cut of a hide';
  const known = PARTIES.find(([start]) => id.startsWith(start));
  return known === undefined ? id : `${known[1]}${id.slice(known[0].length)}`;
}

/** Copies that were not laid, and why. */
export function unplacedFinding(copy: UnplacedCopy, count: number, order: ResolvedOrder): Diagnostic {
  const { piece, article, reason } = copy;
  const asked = order.articles
    .find(({ name }) => name === article)
    ?.pieces.find(({ name }) => name === piece);
  const needs = asked === undefined ? {} : { needs: needWords(asked) };
  return { code: `unplaced-${reason}`, severity: 'error', params: { piece, article, count, ...needs } };
}

/** What a piece asks of the leather: "looks A on its face and C elsewhere, strength, bend or shoulder". */
function needWords({ looks, bearsLoad, zones }: ResolvedPiece): string {
  const face =
    looks.face === looks.rest
      ? `looks ${looks.face}`
      : `looks ${looks.face} on its face and ${looks.rest} elsewhere`;
  return [
    face,
    ...(bearsLoad ? ['sound leather'] : []),
    ...(zones === undefined ? [] : [`a place in the ${listWords(zones)}`]),
  ].join(', ');
}

function shorten(value: number): number {
  return Number(value.toFixed(MEASURED_DECIMALS));
}
