import type { Diagnostic, LayoutViolation, PieceCopy, UnplacedCopy } from '@hidebound/leather';

/** Decimals of a measured length or angle in a sentence: 0.1 µm shows which side of the limit it is on. */
const MEASURED_DECIMALS = 4;

/** "front" of saddlebag, set 2, copy 1, mirrored. */
export function copyWords(copy: PieceCopy): string {
  return `"${copy.piece}" of ${copy.article}, set ${copy.set}, copy ${copy.copy}${copy.mirrored ? ', mirrored' : ''}`;
}

/** A broken rule as a finding: which piece, and why, in the catalogue's words. */
export function violationFinding(violation: LayoutViolation, file: string): Diagnostic {
  const { rule, at, other, part, hide, place, measured, required, accepted } = violation;
  const party = other === undefined || typeof other === 'string' ? other : copyWords(other);
  const who = at === undefined ? (party ?? 'The layout') : copyWords(at);
  const params: Record<string, string | number> = {
    what: part === undefined ? who : `The ${part} of ${who}`,
  };
  if (party !== undefined && at !== undefined) params['other'] = party;
  if (measured !== undefined) params['measured'] = shorten(measured);
  if (required !== undefined) params['required'] = shorten(required);
  return {
    code: `broken-${rule}`,
    severity: accepted ? 'note' : 'error',
    params,
    place: {
      file,
      ...(hide === undefined ? {} : { at: `hide ${hide}` }),
      ...(place === undefined ? {} : { point: place }),
    },
  };
}

/** A copy that was not laid, and why. */
export function unplacedFinding(copy: UnplacedCopy, count: number): Diagnostic {
  const { piece, article, reason } = copy;
  return { code: `unplaced-${reason}`, severity: 'error', params: { piece, article, count } };
}

function shorten(value: number): number {
  return Number(value.toFixed(MEASURED_DECIMALS));
}
