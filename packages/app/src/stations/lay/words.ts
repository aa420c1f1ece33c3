import type { PieceCopy, UnplacedCopy } from '@hidebound/leather';
import type { App } from '../../app/app.js';
import type { Broken } from '../../work/laying/found.js';

/** Rules that are measured in mm; the one for the direction is in degrees, the others tell no figure. */
const IN_MM: readonly Broken['rule'][] = ['gap', 'edge', 'void'];

/** "front, set 2, the 1st": which copy, without the article where the reader has it before her. */
export function copyWords(app: App, { piece, set, copy, mirrored }: PieceCopy): string {
  return app.say(mirrored ? 'lay.copy.mirrored' : 'lay.copy.plain', { piece, set, copy });
}

/** What a piece breaks, as it stands behind its name: "too near to front: 1.2 mm instead of 3 mm". */
export function brokenWords(app: App, { rule, other, measured, required }: Broken): string {
  const measures = app.measures();
  const party = partyWords(app, other);
  if (IN_MM.includes(rule) && measured !== undefined && measured < 0)
    return app.say(`lay.over.${rule as 'gap' | 'edge' | 'void'}`, {
      other: party,
      by: measures.length(-measured),
    });
  if (measured === undefined || required === undefined) return app.say(`lay.rule.${rule}`, { other: party });
  if (IN_MM.includes(rule)) {
    const figures = { measured: measures.length(measured), required: measures.length(required) };
    return app.say(`lay.near.${rule as 'gap' | 'edge' | 'void'}`, { other: party, ...figures });
  }
  if (rule === 'angle')
    return app.say('lay.turned', {
      measured: measures.degrees(measured),
      required: measures.degrees(required),
    });
  return app.say(`lay.rule.${rule}`, { other: party });
}

/** A whole sentence for one broken rule of a layout. */
export function brokenSentence(app: App, broken: Broken): string {
  const words = brokenWords(app, broken);
  return broken.who === undefined
    ? app.say('lay.broken.all', { words })
    : app.say('lay.broken.one', { who: copyWords(app, broken.who), words });
}

const PARTIES = {
  'flaw:': 'lay.party.flaw',
  'zone:': 'lay.party.zone',
  'candidate:': 'lay.party.candidate',
  'unsure-edge:': 'lay.party.unsureEdge',
  'swatch/': 'lay.party.swatch',
  'spoiled/': 'lay.party.spoiled',
} as const;

function partyWords(app: App, other: Broken['other']): string {
  if (other === undefined) return app.say('lay.party.something');
  if (typeof other !== 'string') return other.piece;
  const known = Object.entries(PARTIES).find(([start]) => other.startsWith(start));
  return app.say(known?.[1] ?? 'lay.party.something');
}

/** Copies that lie nowhere, one row for each piece and reason. */
export interface LeftOver {
  readonly copies: readonly UnplacedCopy[];
  readonly reason: UnplacedCopy['reason'];
}

export function leftOver(unplaced: readonly UnplacedCopy[]): LeftOver[] {
  const groups = new Map<string, UnplacedCopy[]>();
  for (const copy of unplaced) {
    const key = JSON.stringify([copy.article, copy.piece, copy.mirrored, copy.reason]);
    groups.set(key, [...(groups.get(key) ?? []), copy]);
  }
  return [...groups.values()].map((copies) => ({ copies, reason: copies[0]!.reason }));
}
