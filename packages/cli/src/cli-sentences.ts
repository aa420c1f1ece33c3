import { INTAKE_SENTENCES } from '@hidebound/intake';
import type { LayoutViolation, SentenceTable } from '@hidebound/leather';

interface AcceptedParams {
  readonly what: string;
  readonly other?: string;
  readonly measured?: number;
  readonly required?: number;
}

type RuleName = LayoutViolation['rule'];

/** The rules as they are called where one was accepted to be broken. */
const RULES: Readonly<Record<RuleName, string>> = {
  gap: 'the gap between pieces',
  edge: 'the distance to the edge',
  void: 'the distance to what is never to be used',
  looks: 'the looks of the leather',
  strength: 'sound leather under load',
  zone: 'the zones that it may come from',
  angle: 'the direction',
  thickness: 'the thickness',
  mirrored: 'plain or mirrored',
  pair: 'a pair that stretches alike',
  count: 'the count',
  set: 'a set on one hide',
  lot: 'a set of one lot',
  sheet: 'a hide of its leather',
  locked: 'the locked place',
  lane: 'the lane of straps',
  'rough-cut': 'the rough cut',
  finite: 'a place in numbers',
};

function acceptedSentence(rule: RuleName): (p: AcceptedParams) => string {
  return ({ what, other, measured, required }) => {
    const figures =
      measured === undefined || required === undefined ? '' : ` (${measured} where ${required} is asked)`;
    return `${what} breaks a rule that was accepted by hand: ${RULES[rule]}${other === undefined ? '' : `, ${other}`}${figures}.`;
  };
}

/** English sentences for what this package finds itself. */
const CLI_SENTENCES: SentenceTable = {
  'workshop-not-needed': () =>
    'This file makes no difference here: the layout says itself what flaws and zones mean; leave out --workshop, or lay the order anew with it.',
  'photo-not-shown': (p: { hide: string; why: string }) =>
    `Hide ${p.hide} is drawn without its photo. ${p.why}`,
  'search-ended-early': (p: { reason: string; placed: string }) =>
    `The search ended early (${p.reason}); the best layout up to then, with ${p.placed} laid, is kept.`,
  'yield-figures-differ': (p: { hide: string; figures: string }) =>
    `The yield figures of ${p.hide} are not what its placements give (${p.figures}); lay the order anew.`,
  ...Object.fromEntries(
    (Object.keys(RULES) as RuleName[]).map((rule) => [`accepted-${rule}`, acceptedSentence(rule)]),
  ),
};

/** The tables that are looked up before those of leather. */
export const SENTENCE_TABLES: readonly SentenceTable[] = [CLI_SENTENCES, INTAKE_SENTENCES];
