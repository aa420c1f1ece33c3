import { WORKSHOP_TOPICS, formatArea, formatMoney, formatThickness, workshopRows } from '@hidebound/leather';
import type {
  Effect,
  Money,
  Span,
  StitchWish,
  ThicknessRange,
  Workshop,
  WorkshopRow,
  WorkshopTopic,
} from '@hidebound/leather';
import type { Report, ReportBlock } from '../report/report.js';

/** One value as it is shown. */
export interface ShownValue {
  readonly name: string;
  readonly value: string;
  readonly source: string;
  readonly isOwn: boolean;
}

export interface ShownTopic {
  readonly topic: WorkshopTopic;
  readonly title: string;
  readonly values: readonly ShownValue[];
}

export interface ValuesOptions {
  readonly workshop: Workshop;
  /** Absent: all. */
  readonly topic?: WorkshopTopic;
  /** Only what the user's file says. */
  readonly onlyOwn: boolean;
}

const TITLES: Readonly<Record<WorkshopTopic, string>> = {
  parts: 'What each part needs',
  flaws: 'What each kind of flaw does',
  zones: 'What leather of each zone is like',
  cutting: 'Ways of cutting',
  goods: 'What kinds of goods want of their leather',
  tannages: 'What leather of each tannage can do',
  cuts: 'Sizes of cuts and skins',
  grades: 'Shares of a hide that are free of flaws',
  figures: 'Times, shares and allowances',
  coverages: 'What a coat of a liquid takes',
  irons: 'Stitching irons',
  offers: 'Leather that can be bought',
  prices: 'Prices',
  rates: 'Rates, and what is kept',
};

/** Every value of a workshop in words, with its source. */
export function shownTopics({ workshop, topic, onlyOwn }: ValuesOptions): ShownTopic[] {
  return WORKSHOP_TOPICS.filter((each) => topic === undefined || each === topic)
    .map((each) => ({ topic: each, title: TITLES[each], values: shownValues(workshop, each) }))
    .map((shown) => (onlyOwn ? { ...shown, values: shown.values.filter(({ isOwn }) => isOwn) } : shown))
    .filter(({ values }) => values.length > 0);
}

/** The same as a report. `file` is the workshop file, where there is one. */
export function valuesReport(options: ValuesOptions, file: string | undefined): Report {
  const topics = shownTopics(options);
  const all = topics.flatMap(({ values }) => values);
  const own = all.filter(({ isOwn }) => isOwn).length;
  const answer =
    file === undefined
      ? `${all.length} values, all of them built in`
      : `${all.length} values, ${own} of them yours`;
  return {
    title: 'The workshop’s values',
    subtitle: options.workshop.name ?? file ?? 'as they are built in',
    blocks: [
      { kind: 'text', tone: 'answer', text: answer },
      {
        kind: 'text',
        tone: 'soft',
        text:
          file === undefined
            ? 'Each can be overruled in a workshop.yaml beside the order. The mark behind it says where it comes from.'
            : 'Yours are marked with a star. The mark behind each says where it comes from.',
      },
      ...topics.flatMap(topicBlocks),
    ],
  };
}

function topicBlocks({ title, values }: ShownTopic): ReportBlock[] {
  return [
    { kind: 'section', title },
    {
      kind: 'table',
      columns: [
        { head: 'what', align: 'left' },
        { head: 'value', align: 'left' },
        { head: 'source', align: 'left' },
      ],
      rows: values.map(({ name, value, source, isOwn }) => [isOwn ? `${name} *` : name, value, source]),
    },
  ];
}

function shownValues(workshop: Workshop, topic: WorkshopTopic): ShownValue[] {
  const shown = <Rule>(rows: readonly WorkshopRow<Rule>[], words: (rule: Rule) => string): ShownValue[] =>
    rows.map(({ name, rule, source, isOwn }) => ({ name, value: words(rule), source, isOwn }));
  switch (topic) {
    case 'parts':
      return shown(workshopRows(workshop, topic), (rule) =>
        joined([
          `looks ${rule.looks.face}, rest ${rule.looks.rest}`,
          rule.bearsLoad ? 'bears load' : undefined,
          rule.zones === undefined ? 'any zone' : rule.zones.join(', '),
          rule.direction.rule === 'free'
            ? 'any direction'
            : `${rule.direction.rule} within ${rule.direction.toleranceDeg}°`,
          thicknessWords(rule.thickness),
          rule.tooThick === 'skive' ? 'skived where too thick' : undefined,
        ]),
      );
    case 'flaws':
      return shown(workshopRows(workshop, topic), ({ effect }) => effectWords(effect));
    case 'zones':
      return shown(workshopRows(workshop, topic), ({ effect }) => effectWords(effect));
    case 'cutting':
      return shown(
        workshopRows(workshop, topic),
        ({ gapMm, edgeMm, voidMm, kerfMm }) =>
          `gap ${gapMm} mm, edge ${edgeMm} mm, flaws ${voidMm} mm, kerf ${kerfMm} mm`,
      );
    case 'goods':
      return shown(workshopRows(workshop, topic), (rule) =>
        joined([
          thicknessWords(rule.thickness),
          rule.tannages.join(' or '),
          rule.tempers.join(' or '),
          rule.finish,
          rule.zones?.join(', '),
          rule.needs.join(', '),
        ]),
      );
    case 'tannages':
      return shown(workshopRows(workshop, topic), ({ meets }) => {
        const words = Object.entries(meets).map(([need, how]) => `${need}: ${how}`);
        return words.length === 0 ? 'fit for all' : words.join(', ');
      });
    case 'cuts':
      return shown(
        workshopRows(workshop, topic),
        ({ areaMm2, lengthMm, widthMm }) =>
          `${areaWords(areaMm2)}, ${spanWords(lengthMm)} × ${spanWords(widthMm)} mm`,
      );
    case 'grades':
      return shown(workshopRows(workshop, topic), ({ usableShare }) => `${percentWords(usableShare)} %`);
    case 'figures':
      return shown(workshopRows(workshop, topic), ({ value, unit }) => `${spanWords(value)} ${unit}`);
    case 'coverages':
      return shown(
        workshopRows(workshop, topic),
        ({ minMlPerM2, maxMlPerM2 }) => `${spanWords({ min: minMlPerM2, max: maxMlPerM2 })} mL/m²`,
      );
    case 'irons':
      return shown(workshopRows(workshop, topic), ({ pitchMm }) => `${pitchMm} mm from tooth to tooth`);
    case 'offers':
      return shown(workshopRows(workshop, topic), (offer) =>
        joined([
          offer.cut,
          offer.grade === undefined ? undefined : `grade ${offer.grade}`,
          offer.tannage,
          offer.temper,
          offer.colour,
          thicknessWords(offer.thickness),
          offer.areaMm2 === undefined ? undefined : areaWords(offer.areaMm2),
          `${formatMoney(offer.price)} per ${offer.per}`,
        ]),
      );
    case 'prices':
      return shown(workshopRows(workshop, topic), ({ price, per }) => `${formatMoney(price)} per ${per}`);
    case 'rates':
      return shown(workshopRows(workshop, topic), rateWords).map((value) => ({
        ...value,
        name: RATE_NAMES[value.name] ?? value.name,
      }));
  }
}

const RATE_NAMES: Readonly<Record<string, string>> = {
  keep: 'smallest leftover worth keeping',
  stitch: 'how seams are sewn',
  hourlyRate: 'an hour of work',
  overhead: 'overhead',
  profit: 'profit',
  tax: 'tax',
  rounding: 'prices are rounded to',
};

function rateWords(rule: unknown): string {
  if (typeof rule === 'number') return `${rule} %`;
  if (Array.isArray(rule)) return `${rule.join(' × ')} mm`;
  const { amount, to, way } = rule as Partial<Money> & { readonly to?: Money; readonly way?: string };
  if (amount !== undefined) return formatMoney(rule as Money);
  if (to !== undefined) return `${formatMoney(to)}, ${way === 'up' ? 'upwards' : 'the nearest'}`;
  return stitchWords(rule as StitchWish);
}

function stitchWords(wish: StitchWish): string {
  return Object.entries(wish)
    .map(([key, value]) => `${key} ${Array.isArray(value) ? value.join(', ') : String(value)}`)
    .join(', ');
}

function joined(words: readonly (string | undefined)[]): string {
  return words.filter((each) => each !== undefined && each !== '').join('; ');
}

function thicknessWords(range: ThicknessRange | undefined): string | undefined {
  return range === undefined ? undefined : formatThickness(range, { unit: 'mm' });
}

function effectWords({ looks, strength, isVoid }: Effect): string {
  return isVoid ? 'never here' : `looks ${looks}, ${strength}`;
}

function spanWords({ min, max }: Span): string {
  return min === max ? String(min) : `${min}–${max}`;
}

function percentWords({ min, max }: Span): string {
  const percent = (share: number): number => Math.round(share * 1000) / 10;
  return spanWords({ min: percent(min), max: percent(max) });
}

function areaWords({ min, max }: Span): string {
  const [from, to] = [min, max].map((mm2) => formatArea(mm2, { unit: 'quarter ft2' }));
  return from === to ? from! : `${from!.replace(' ft²', '')}–${to!}`;
}
