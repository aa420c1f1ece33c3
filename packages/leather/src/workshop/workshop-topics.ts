import type { SourceMark, Workshop } from '../model/workshop.js';
import { DEFAULT_WORKSHOP } from './default-workshop.js';

/** The tables of the workshop file, by the key that each has in there. */
export const WORKSHOP_TOPICS = [
  'parts',
  'flaws',
  'zones',
  'cutting',
  'goods',
  'tannages',
  'cuts',
  'grades',
  'figures',
  'coverages',
  'irons',
  'offers',
  'prices',
  'rates',
] as const;
export type WorkshopTopic = (typeof WORKSHOP_TOPICS)[number];

/** One row of a table: what it is called, what it says, where that comes from. */
export interface WorkshopRow<Rule = unknown> {
  readonly name: string;
  readonly rule: Rule;
  readonly source: SourceMark;
  /** The user’s, and not what is built in. */
  readonly isOwn: boolean;
}

type RulesOf = {
  readonly parts: Workshop['parts'][number];
  readonly flaws: Workshop['flawDefaults'][number];
  readonly zones: Workshop['zoneDefaults'][number];
  readonly cutting: Workshop['cuttingMethods'][number];
  readonly goods: Workshop['goods'][number];
  readonly tannages: Workshop['tannages'][number];
  readonly cuts: Workshop['cuts'][number];
  readonly grades: Workshop['grades'][number];
  readonly figures: Workshop['figures'][number];
  readonly coverages: Workshop['coverages'][number];
  readonly irons: Workshop['irons'][number];
  readonly offers: Workshop['offers'][number];
  readonly prices: Workshop['prices'][number];
  readonly rates: unknown;
};

type NamedRule<Rule> = readonly [name: string, rule: Rule, source: SourceMark];

const OWN = 'own';

const READ: {
  readonly [Topic in WorkshopTopic]: (workshop: Workshop) => readonly NamedRule<RulesOf[Topic]>[];
} = {
  parts: ({ parts }) => parts.map((rule) => [rule.part, rule, rule.source]),
  flaws: ({ flawDefaults }) => flawDefaults.map((rule) => [rule.kind, rule, rule.source]),
  zones: ({ zoneDefaults }) => zoneDefaults.map((rule) => [rule.kind, rule, rule.source]),
  cutting: ({ cuttingMethods }) => cuttingMethods.map((rule) => [rule.method, rule, rule.source]),
  goods: ({ goods }) => goods.map((rule) => [rule.goods, rule, rule.source]),
  tannages: ({ tannages }) => tannages.map((rule) => [rule.tannage, rule, rule.source]),
  cuts: ({ cuts }) => cuts.map((rule) => [rule.name, rule, rule.source]),
  grades: ({ grades }) => grades.map((rule) => [rule.grade, rule, rule.source]),
  figures: ({ figures }) => figures.map((rule) => [rule.name, rule, rule.source]),
  coverages: ({ coverages }) => coverages.map((rule) => [rule.product, rule, rule.source]),
  irons: ({ irons }) => irons.map((rule) => [rule.name, rule, rule.source]),
  offers: ({ offers }) => offers.map((rule) => [rule.name, rule, rule.source]),
  prices: ({ prices }) => prices.map((rule) => [rule.name, rule, OWN]),
  rates: rateRules,
};

/** What stands alone in the file: sizes worth keeping, and what is reckoned on top of the material. */
function rateRules(workshop: Workshop): NamedRule<unknown>[] {
  const { keepMm, stitch, hourlyRate, overheadPercent, profitPercent, taxPercent, rounding } = workshop;
  const usual = JSON.stringify(keepMm) === JSON.stringify(DEFAULT_WORKSHOP.keepMm);
  const given: readonly NamedRule<unknown>[] = [
    ['keep', keepMm, usual ? 'common practice, no source' : OWN],
    ['stitch', stitch, OWN],
    ['hourlyRate', hourlyRate, OWN],
    ['overhead', overheadPercent, OWN],
    ['profit', profitPercent, OWN],
    ['tax', taxPercent, OWN],
    ['rounding', rounding, OWN],
  ];
  return given.filter(([, rule]) => rule !== undefined);
}

/** The rows of one table, in the order of the file; each told apart from what is built in. */
export function workshopRows<Topic extends WorkshopTopic>(
  workshop: Workshop,
  topic: Topic,
): WorkshopRow<RulesOf[Topic]>[] {
  const builtIn = new Map(READ[topic](DEFAULT_WORKSHOP).map(([name, rule]) => [name, sameText(rule)]));
  return READ[topic](workshop).map(([name, rule, source]) => ({
    name,
    rule: rule,
    source,
    isOwn: builtIn.get(name) !== sameText(rule),
  }));
}

/**
 * Two rules say the same where this text is the same. The keys of a rule stand in the order in which it was made, so
 * they are sorted.
 */
function sameText(rule: unknown): string {
  return JSON.stringify(rule, (_, value: unknown) =>
    typeof value === 'object' && value !== null && !Array.isArray(value)
      ? Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)))
      : value,
  );
}

/** A row that was once written out from what was built in, which has another value now. */
export interface StaleRow {
  readonly topic: WorkshopTopic;
  readonly name: string;
  readonly own: unknown;
  readonly builtIn: unknown;
}

/**
 * Rows whose source is not the user’s own but the built-in one, and whose value differs from it: an older version wrote
 * them out, and the trade’s figure is another one now. The user’s file counts all the same.
 */
export function staleRows(workshop: Workshop): StaleRow[] {
  return WORKSHOP_TOPICS.flatMap((topic) => {
    const builtIn = new Map(READ[topic](DEFAULT_WORKSHOP).map(([name, rule]) => [name, rule]));
    return workshopRows(workshop, topic).flatMap(({ name, rule, source, isOwn }): StaleRow[] => {
      const usual = builtIn.get(name);
      if (!isOwn || source === OWN || usual === undefined || topic === 'rates') return [];
      return [{ topic, name, own: rule, builtIn: usual }];
    });
  });
}
