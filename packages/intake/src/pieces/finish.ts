import { findSelfCrossing } from '@hidebound/geometry';
import type { LineRole, PatternPiece, Piece } from '@hidebound/leather';
import type { Labels } from '../drawing/drawn-line.js';
import { placeOf, tell } from '../findings.js';
import type { Findings } from '../findings.js';
import { flatRing } from '../lines/duplicates.js';
import { isFinished } from '../lines/finished.js';
import type { HalfSigns } from './find-halves.js';
import type { GatherOptions } from './gather.js';
import { countInGroups, labelsAbout, namePieces } from './names.js';
import type { AboutPiece } from './names.js';
import type { PieceParts } from './parts.js';
import { unfoldBySigns } from './unfold-pieces.js';

/** Pieces with their lines, and what is known of them. */
export interface PlacedPieces {
  readonly pieces: readonly PieceParts[];
  readonly guesses: ReadonlyMap<PieceParts, ReadonlyMap<LineRole, number>>;
  readonly signs: ReadonlyMap<PieceParts, HalfSigns>;
}

/** Pieces with their names, numbers and direction, unfolded where they are halves; tells what was guessed of them. */
export function finishPieces(
  { pieces, guesses, signs }: PlacedPieces,
  { unfolds, size }: GatherOptions,
  findings: Findings,
): PatternPiece[] {
  const names = namePieces(pieces, size, findings);
  const counts = countInGroups(pieces);
  const result = pieces.map((parts, i) => {
    const drawn = patternPiece(parts, names[i]!, labelsInOrder(labelsAbout(parts, counts)), findings);
    const piece = unfoldBySigns(drawn.piece, parts, signs.get(parts), unfolds, findings);
    tellCrossing(parts, piece, findings);
    const own = size ?? savedSize(parts, counts);
    return { ...drawn, piece, ...(own === undefined ? {} : { size: own }) };
  });
  tellGuessedRoles(pieces, names, guesses, findings);
  tellGuessedDirections(result, findings);
  return result;
}

/** A piece of a saved pattern says itself which size it is: its file holds each size apart already. */
function savedSize(parts: PieceParts, counts: ReadonlyMap<number, number>): string | undefined {
  if (!isFinished(parts.outline.line)) return undefined;
  return labelsInOrder(labelsAbout(parts, counts))
    .map(({ data }) => data['size'])
    .find((text) => text !== undefined && text !== '');
}

function labelsInOrder({ clones, own, groups }: AboutPiece): Labels[] {
  return [...clones, own, ...groups];
}

function tellCrossing({ outline }: PieceParts, { name, cut }: Piece, findings: Findings): void {
  const isDrawn = cut === outline.line.curve;
  if (isDrawn && outline.circle !== undefined) return;
  const crossing = findSelfCrossing(isDrawn ? outline.ring : flatRing(cut));
  if (crossing === undefined) return;
  const place = { ...placeOf(outline.line.source), point: crossing.place };
  tell(findings, 'error', 'outline-crosses-itself', { piece: name }, place);
}

/** One note for each role that was guessed, naming the first few pieces. */
function tellGuessedRoles(
  pieces: readonly PieceParts[],
  names: readonly string[],
  guesses: ReadonlyMap<PieceParts, ReadonlyMap<LineRole, number>>,
  findings: Findings,
): void {
  const byRole = new Map<LineRole, { count: number; pieces: string[] }>();
  pieces.forEach((parts, i) => {
    for (const [role, count] of guesses.get(parts) ?? []) {
      const sum = byRole.get(role) ?? { count: 0, pieces: [] };
      byRole.set(role, {
        count: sum.count + count,
        pieces: [...sum.pieces.slice(0, NAMED_PIECES), names[i]!],
      });
    }
  });
  for (const [role, { count, pieces: named }] of byRole) {
    tell(findings, 'note', 'role-guessed', { role, count, pieces: firstFew(named, named.length) });
  }
}

/** Pieces named in one sentence. */
const NAMED_PIECES = 4;

function firstFew(names: readonly string[], total: number): string {
  const shown = names.slice(0, NAMED_PIECES).join(', ');
  return total > NAMED_PIECES ? `${shown} and others` : shown;
}

function tellGuessedDirections(pieces: readonly PatternPiece[], findings: Findings): void {
  const without = pieces.filter(({ piece }) => piece.direction === undefined).map(({ piece }) => piece.name);
  if (without.length === 0) return;
  const names = firstFew(without, without.length);
  tell(findings, 'note', 'direction-not-drawn', { count: without.length, pieces: names });
}

function patternPiece(
  parts: PieceParts,
  name: string,
  labels: readonly Labels[],
  findings: Findings,
): PatternPiece {
  const { source } = parts.outline.line;
  const arrow = directionOf(parts, name, findings);
  const piece: Piece = {
    name,
    cut: parts.outline.line.curve,
    cutOuts: parts.cutOuts,
    punches: parts.punches,
    notches: parts.notches,
    stitchLines: parts.stitchLines,
    foldLines: parts.foldLines,
    skiveLines: parts.skiveLines,
    cementLines: parts.cementLines,
    ...(arrow === undefined ? {} : { direction: arrow }),
    face: parts.face,
  };
  const count = wholeNumber('count', labels, parts, findings, 1);
  const mirrored = wholeNumber('mirrored', labels, parts, findings, 0);
  const material = labels
    .map(({ data }) => data['material'])
    .find((text) => text !== undefined && text !== '');
  return {
    piece,
    source: { file: findings.file, element: source.name },
    ...(count === undefined ? {} : { count }),
    ...(mirrored === undefined ? {} : { mirrored }),
    ...(material === undefined ? {} : { material }),
  };
}

/** Of several direction lines the longest one; arrow heads are short. */
function directionOf(parts: PieceParts, name: string, findings: Findings): Piece['direction'] {
  const [longest, second] = [...parts.directions].sort((a, b) => b.lengthMm - a.lengthMm);
  if (longest !== undefined && second !== undefined && second.lengthMm > longest.lengthMm / 2) {
    tell(findings, 'warning', 'several-directions', { piece: name }, placeOf(second.line.source));
  }
  return longest?.arrow;
}

function wholeNumber(
  key: 'count' | 'mirrored',
  labels: readonly Labels[],
  parts: PieceParts,
  findings: Findings,
  least: number,
): number | undefined {
  const text = labels.map(({ data }) => data[key]).find((value) => value !== undefined);
  if (text === undefined) return undefined;
  const n = Number(text);
  if (text !== '' && Number.isInteger(n) && n >= least) return n;
  tell(
    findings,
    'warning',
    'bad-data-number',
    { name: `data-${key}`, value: text },
    placeOf(parts.outline.line.source),
  );
  return undefined;
}
