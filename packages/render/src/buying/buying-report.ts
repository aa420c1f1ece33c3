import type { KindAnswer, LevelAnswer, Money, PurchaseAnswer, ResolvedOrder } from '@hidebound/leather';
import {
  LEVELS,
  USUAL_LEVEL,
  capital,
  exactMoney,
  moneyText,
  namesOf,
  plusMoney,
  toCoins,
} from '@hidebound/leather';
import type { Report, ReportBlock, ReportFact } from '../report/report.js';
import type { FontBook } from '../text/font-book.js';
import { areaSpanWords, areaWords, costWords, unitOf } from './buying-words.js';
import type { BuyingUnit } from './buying-words.js';
import { chanceChart } from './chance-chart.js';

export interface BuyingReportInput {
  readonly order: Pick<ResolvedOrder, 'name' | 'version' | 'date'>;
  readonly answers: readonly PurchaseAnswer[];
  /** How far stated areas may be off, per cent. */
  readonly statedAreaOffPercent: { readonly min: number; readonly max: number };
  readonly wasStopped: boolean;
  /** Given where pages are drawn: charts need letters. */
  readonly fonts?: FontBook;
}

/** What to buy for an order, in words and figures. */
export function buyingReport(input: BuyingReportInput): Report {
  const { order, answers, wasStopped } = input;
  return {
    title: 'What to buy',
    subtitle: `${order.name}, version ${order.version}, ${order.date}`,
    blocks: [
      ...(wasStopped
        ? [text('plain', 'Stopped by hand: this is the answer so far, and it rests on few trial layouts.')]
        : []),
      ...answers.flatMap((answer) => purchaseBlocks(answer, input)),
      ...togetherBlocks(answers),
      ...howBlocks(input),
    ],
  };
}

function text(tone: 'answer' | 'plain' | 'soft', words: string): ReportBlock {
  return { kind: 'text', tone, text: words };
}

function purchaseBlocks(answer: PurchaseAnswer, { fonts }: BuyingReportInput): ReportBlock[] {
  const unit = unitOf(answer.kinds);
  const first = answer.kinds[0];
  const chart = fonts === undefined ? undefined : chanceChart(answer, unit, fonts);
  return [
    { kind: 'section', title: capital(namesOf(answer)) },
    text('answer', answerWords(answer, unit)),
    ...(answer.leathers.length > 1
      ? [text('soft', 'They ask for the same leather, so they are bought as one.')]
      : []),
    kindsTable(answer, unit),
    text(
      'soft',
      `Hides that are enough in so many of 100; “bought” and “cost” are for ${USUAL_LEVEL} of 100.`,
    ),
    ...(chart === undefined ? [] : [{ kind: 'picture' as const, drawing: chart, caption: CHART_CAPTION }]),
    ...(first?.holdsAll === true ? [sizesTable(first, unit), lossFacts(answer, first, unit)].flat() : []),
  ];
}

const CHART_CAPTION = 'How often so much leather is enough. Dots: so many hides of middle size.';

function answerWords({ kinds }: PurchaseAnswer, unit: BuyingUnit): string {
  const first = kinds[0];
  const level = first === undefined ? undefined : levelOf(first);
  if (first?.holdsAll !== true || level?.hides === undefined) {
    return 'None of the hides that can be bought holds all of these pieces.';
  }
  const often = first.counts.find(({ hides }) => hides === level.hides)?.inHundred ?? level.inHundred;
  const cost = level.cost === undefined ? '' : `, ${costWords(level.cost)}`;
  return `Buy ${level.hides} of “${first.name}”, ${areaSpanWords(first.areaMm2, unit)} each: enough in ${often} of 100${cost}.`;
}

function levelOf({ levels }: KindAnswer): LevelAnswer | undefined {
  return levels.find(({ inHundred }) => inHundred === USUAL_LEVEL);
}

/** Each kind of hide a row, the first choice first. */
function kindsTable({ kinds }: PurchaseAnswer, unit: BuyingUnit): ReportBlock {
  const isPriced = kinds.some(({ price }) => price !== undefined);
  const right = (head: string) => ({ head, align: 'right' as const });
  return {
    kind: 'table',
    columns: [
      { head: 'hides', align: 'left' },
      right('area of one'),
      ...LEVELS.map((level) => right(`${level} of 100`)),
      right('bought'),
      ...(isPriced ? [right('cost'), right('a ft² in pieces')] : []),
    ],
    rows: kinds.map((kind) => {
      const level = levelOf(kind);
      return [
        kind.name,
        areaSpanWords(kind.areaMm2, unit),
        ...kind.levels.map(({ hides }) =>
          !kind.holdsAll || hides === undefined ? 'no number' : String(hides),
        ),
        !kind.holdsAll || level?.areaMm2 === undefined ? '' : areaSpanWords(level.areaMm2, unit),
        ...(isPriced
          ? [
              !kind.holdsAll || level?.cost === undefined ? '' : costWords(level.cost),
              !kind.holdsAll || kind.truePricePerFt2 === undefined ? '' : moneyText(kind.truePricePerFt2),
            ]
          : []),
      ];
    }),
  };
}

/** Where a few square feet more or less a hide make the difference. */
function sizesTable({ name, counts }: KindAnswer, unit: BuyingUnit): ReportBlock[] {
  const rows = counts.flatMap(({ hides, bySize }) =>
    bySize.map(({ areaMm2, inHundred }) => [
      `${hides} of “${name}”`,
      areaSpanWords(areaMm2, unit),
      `${inHundred} of 100`,
    ]),
  );
  if (rows.length === 0) return [];
  return [
    {
      kind: 'table',
      columns: [
        { head: 'hides', align: 'left' },
        { head: 'area of each one', align: 'right' },
        { head: 'enough in', align: 'right' },
      ],
      rows,
    },
  ];
}

function lossFacts(answer: PurchaseAnswer, kind: KindAnswer, unit: BuyingUnit): ReportBlock[] {
  const { low, likely, high } = kind.needMm2;
  const { betweenMm2, edgeMm2, flawsMm2 } = kind.losses;
  const share = (mm2: number): string => `${areaWords(mm2, unit)}, ${Math.round((100 * mm2) / likely)} %`;
  const rows: ReportFact[] = [
    { name: 'Where the leather goes', value: `“${kind.name}”` },
    { name: `In ${answer.copies} pieces`, value: share(answer.piecesMm2) },
    { name: 'Lost between pieces', value: share(betweenMm2) },
    { name: 'Lost at the edge', value: share(edgeMm2) },
    { name: 'Lost to flaws', value: share(flawsMm2) },
    { name: 'Needed, as likely less as more', value: areaWords(likely, unit) },
    { name: 'Needed, from one in ten to nine in ten', value: areaSpanWords({ min: low, max: high }, unit) },
  ];
  return [{ kind: 'facts', rows }];
}

/** First choices together; where there is a single purchase it has told its cost already. */
function togetherBlocks(answers: readonly PurchaseAnswer[]): ReportBlock[] {
  const costs = answers.map(({ kinds }) =>
    kinds[0]?.holdsAll === true ? levelOf(kinds[0])?.cost : undefined,
  );
  const known = costs.flatMap((cost) => (cost === undefined ? [] : [cost]));
  if (answers.length < 2 || known.length < answers.length) return [];
  if (new Set(known.map(({ from }) => from.currency)).size > 1) return [];
  const sum = (pick: 'from' | 'to'): Money =>
    toCoins(known.map((cost) => exactMoney(cost[pick])).reduce((a, b) => plusMoney(a, b)));
  return [
    { kind: 'section', title: 'Together' },
    text('answer', `All that is to be bought: ${costWords({ from: sum('from'), to: sum('to') })}.`),
  ];
}

function howBlocks({ answers, statedAreaOffPercent: off }: BuyingReportInput): ReportBlock[] {
  const trials = answers.flatMap(({ kinds }) => kinds.map((kind) => kind.trials));
  const [least, most] = [Math.min(...trials), Math.max(...trials)];
  const count = least === most ? String(least) : `${least} to ${most}`;
  const rests =
    most === 0
      ? 'No trial layout was made yet; these figures come from the pieces’ shapes and from what hides of a grade lose.'
      : `For each kind of hide the pieces were laid on hides of chance, ${count} ${most === 1 ? 'time' : 'times'}: made-up hides of its cut, size and grade. Your hides will differ.`;
  return [
    { kind: 'section', title: 'How this was reckoned' },
    text('soft', rests),
    text(
      'soft',
      `All hides of one kind are taken to be of one lot. An area written on a hide may be ${off.min} to ${off.max} % off; measure before you cut, and see each hide’s flaws and thickness before you buy.`,
    ),
  ];
}
