import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { DEFAULT_WORKSHOP, articleCard, cardOrder, completeOrder, writeOrder } from '@hidebound/leather';
import type { ArticleCard, Diagnostic, LayablePiece, OrderFile } from '@hidebound/leather';
import { CliError } from '../cli-error.js';
import type { OptionValues } from '../command-context.js';
import { textOption, textsOption } from '../command-context.js';
import { planOf } from '../io/load-order.js';
import { loadWorkshop } from '../io/load-workshop.js';
import type { WorkshopInUse } from '../io/load-workshop.js';
import { pathFrom } from '../io/path-from.js';
import type { FileToWrite } from '../io/write-safely.js';
import { loadStock } from '../stock/load-stock.js';
import { cardColours, cardLines } from './card-lines.js';
import type { LoadedLine } from './card-lines.js';

/** A card with all that it was made from. */
export interface CardJob {
  readonly card: ArticleCard;
  readonly lines: readonly LoadedLine[];
  readonly order: OrderFile;
  readonly pieces: readonly LayablePiece[];
  readonly inUse: WorkshopInUse | undefined;
  readonly paths: readonly string[];
  readonly diagnostics: readonly Diagnostic[];
}

/** Reckons the card of an article, with those that join it. */
export async function loadCard(path: string, options: OptionValues): Promise<CardJob> {
  const orderPath = textOption(options, 'order');
  refuseOldOrder(orderPath);
  const at = orderPath ?? join(dirname(path), 'card.order.yaml');
  const inUse = loadWorkshop(textOption(options, 'workshop'), path);
  const workshop = inUse?.workshop ?? DEFAULT_WORKSHOP;
  const lines = cardLines(path, options, dirname(at));
  const order = cardOrder(lines, {
    name: lines.map(({ article, sets }) => `${sets} × ${article.name}`).join(', '),
    date: dayOf(textOption(options, 'date')),
    cutting: textOption(options, 'cutting')!,
    colours: cardColours(textsOption(options, 'colour'), lines),
  });
  const written = completeOrder(order, workshop, (file) => lines.find((line) => line.file === file)!.article);
  const plan = await planOf(written, at, workshop, { hidesLater: true });
  const stockFolder = textOption(options, 'stock');
  const stock = stockFolder === undefined ? undefined : loadStock(stockFolder);
  const card = articleCard({
    ...plan,
    workshop,
    stock: stock?.hides ?? [],
    lastYields: lastYields(order, lines),
  });
  const remarks = plan.diagnostics.filter(({ severity }) => severity !== 'note');
  return {
    card,
    lines,
    order: withHides(order, card, dirname(at)),
    pieces: plan.pieces,
    inUse,
    paths: [...lines.map((line) => line.path), ...(inUse === undefined ? [] : [inUse.file])],
    diagnostics: [...remarks, ...(stock?.diagnostics ?? []), ...card.sheet.diagnostics],
  };
}

/** An order may hold work of somebody's hand: it is never written over. */
function refuseOldOrder(orderPath: string | undefined): void {
  if (orderPath === undefined || !existsSync(orderPath)) return;
  throw new CliError(
    'can-not-write',
    'There is such an order already, and it stays as it is; give another name.',
    {
      file: orderPath,
    },
  );
}

/** The day as it is here, where none is given. */
function dayOf(given: string | undefined): string {
  if (given !== undefined) {
    if (/^\d{4}-\d{2}-\d{2}$/.test(given) && !Number.isNaN(Date.parse(given))) return given;
    throw new CliError('bad-use', `--date can't be "${given}"; write a day as 2026-03-21.`);
  }
  const now = new Date();
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/** By the name that the article has in the order. */
function lastYields(order: OrderFile, lines: readonly LoadedLine[]): ReadonlyMap<string, number> {
  return new Map(
    lines.flatMap(({ article }, i) => {
      const entry = order.articles[i]!;
      const name = 'file' in entry ? article.name : entry.name;
      return article.lastYield === undefined ? [] : [[name, article.lastYield] as const];
    }),
  );
}

/** The hides that are taken from the stock, as the order names them. */
function withHides(order: OrderFile, card: ArticleCard, folder: string): OrderFile {
  return {
    ...order,
    leathers: order.leathers.map((leather) => {
      const stock = card.leathers.find((each) => each.leather === leather.name)?.stock;
      const taken = (stock?.hides ?? []).filter(({ isTaken }) => isTaken);
      return { ...leather, hides: taken.map(({ file }) => pathFrom(folder, file)) };
    }),
  };
}

export function orderFiles(order: OrderFile, orderPath: string | undefined): FileToWrite[] {
  return orderPath === undefined ? [] : [{ path: orderPath, content: writeOrder(order) }];
}
