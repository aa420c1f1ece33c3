import { moneyText } from '@hidebound/leather';
import type { CoinSpan, CostSheet, CustomerCost } from '@hidebound/leather';
import type { Report, ReportFact } from '../report/report.js';
import { bareSpan, shortNumber, spanText } from './cost-words.js';

export interface QuoteInput {
  readonly sheet: CostSheet;
  readonly customer: CustomerCost;
  readonly order: { readonly name: string; readonly version: string; readonly date: string };
  /** Before there is a hide, a price has a span; after that a customer is told one. */
  readonly isEstimate: boolean;
  /** Who makes the quote. */
  readonly workshop?: string;
}

/** A page for the customer: what, how many, at which price. It tells nothing of what lies behind the prices. */
export function quoteReport({ sheet, customer, order, workshop, isEstimate }: QuoteInput): Report {
  const articles = sheet.articles.filter(({ article }) => customer.articles.includes(article));
  const shown = (span: CoinSpan): CoinSpan =>
    isEstimate ? span : { low: span.likely, likely: span.likely, high: span.likely };
  const { currency, taxPercent } = sheet;
  const toPay = shown(customer.sum);
  const isSure = toPay.low.amount === toPay.high.amount;
  return {
    title: 'Quote',
    subtitle: `${order.name}, version ${order.version}, ${order.date}`,
    blocks: [
      { kind: 'facts', rows: heads(customer, workshop) },
      {
        kind: 'table',
        columns: [
          { head: 'article', align: 'left' },
          { head: 'count', align: 'right' },
          { head: `price each ${currency}`, align: 'right' },
          { head: `sum ${currency}`, align: 'right' },
        ],
        rows: articles.map(({ article, sets, price, sum }) => [
          article,
          String(sets),
          bareSpan(shown(price)),
          bareSpan(shown(sum)),
        ]),
        totals: ['together', '', '', bareSpan(toPay)],
      },
      { kind: 'facts', rows: sums(customer, taxPercent, shown) },
      ...(isSure
        ? []
        : [
            {
              kind: 'text' as const,
              tone: 'plain' as const,
              text: `The price is certain once the leather is bought; most likely it is ${moneyText(customer.sum.likely)}.`,
            },
          ]),
      { kind: 'text', tone: 'plain', text: `The prices hold for the day of the order, ${order.date}.` },
    ],
  };
}

function heads({ for: who }: CustomerCost, workshop: string | undefined): ReportFact[] {
  return [
    ...(workshop === undefined ? [] : [{ name: 'from', value: workshop }]),
    ...(who === undefined ? [] : [{ name: 'for', value: who }]),
  ];
}

function sums(
  { sum, taxInSum, beforeTax }: CustomerCost,
  taxPercent: number | undefined,
  shown: (span: CoinSpan) => CoinSpan,
): ReportFact[] {
  if (taxPercent === undefined) return [{ name: 'To pay', value: spanText(shown(sum)) }];
  return [
    { name: 'Before tax', value: spanText(shown(beforeTax)) },
    { name: `Tax, ${shortNumber(taxPercent)} %`, value: spanText(shown(taxInSum)) },
    { name: 'To pay', value: spanText(shown(sum)) },
  ];
}
