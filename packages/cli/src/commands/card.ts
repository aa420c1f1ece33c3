import type { LayablePiece } from '@hidebound/leather';
import { cardReport, drawSmallPieces } from '@hidebound/render';
import type { Drawing, Report } from '@hidebound/render';
import { loadFontBook } from '@hidebound/render/node';
import { loadCard, orderFiles } from '../cards/card-job.js';
import type { CardJob } from '../cards/card-job.js';
import { writeLastYield } from '../cards/write-last-yield.js';
import type { CommandResult, OptionValues } from '../command-context.js';
import { textOption, textsOption } from '../command-context.js';
import { EXIT_STATUS } from '../exit-status.js';
import { findingLines } from '../finding-words.js';
import { refuseOverwriting, writeFilesSafely } from '../io/write-safely.js';
import { reportLines } from '../report-lines.js';
import { refuseReportNames, reportFiles } from '../report-output.js';

/** Answers a repeat order of an article, prints its card, and writes its order file. */
export async function cardCommand([path]: readonly string[], options: OptionValues): Promise<CommandResult> {
  refuseReportNames(options);
  const layoutPath = textOption(options, 'lastYield');
  if (layoutPath !== undefined) return writeLastYield(path!, layoutPath);
  const job = await loadCard(path!, options);
  const report = reportOf(job, options);
  const orderPath = textOption(options, 'order');
  const isDrawn = textOption(options, 'pdf') !== undefined || textOption(options, 'pageSvg') !== undefined;
  const page = isDrawn ? reportOf(job, options, piecesPicture(job.pieces)) : report;
  const pages = await reportFiles(page, options, { onOnePage: true });
  const files = [...pages, ...orderFiles(job.order, orderPath)];
  const written = files.map((file) => file.path);
  refuseOverwriting(written, job.paths);
  writeFilesSafely(files);
  const { diagnostics: _, ...sheet } = job.card.sheet;
  return {
    exitStatus: EXIT_STATUS.done,
    lines: [
      ...findingLines(job.diagnostics),
      ...(job.diagnostics.length === 0 ? [] : ['']),
      ...reportLines(report),
      ...(written.length === 0 ? [] : ['']),
      ...pages.map((file) => `The card is in ${file.path}`),
      ...orderLines(job, orderPath),
    ],
    data: {
      file: path,
      ...(job.inUse === undefined ? {} : { workshop: job.inUse.file }),
      card: { ...job.card, sheet },
      written,
    },
    diagnostics: job.diagnostics,
  };
}

function orderLines({ order }: CardJob, orderPath: string | undefined): string[] {
  if (orderPath === undefined) return [];
  const bare = order.leathers.filter(({ hides }) => hides.length === 0).map(({ name }) => name);
  const next =
    bare.length === 0
      ? `hidebound lay ${orderPath} goes on from there`
      : `write hides for ${bare.join(', ')} into it before it is laid`;
  return [`The order is in ${orderPath}; ${next}.`];
}

function reportOf({ card, lines, order }: CardJob, options: OptionValues, picture?: Drawing): Report {
  const [first] = lines;
  const isOne = lines.length === 1;
  const colours = textsOption(options, 'colour');
  const sets = `${first!.sets} ${first!.sets === 1 ? 'set' : 'sets'}`;
  const what = isOne
    ? [first!.article.goods, sets, ...(first!.for === undefined ? [] : [`for ${first!.for}`])]
    : [order.name];
  return cardReport({
    card,
    title: isOne ? first!.article.name : 'Articles together',
    subtitle: [...what, ...colours, order.date].join(', '),
    ...(picture === undefined ? {} : { picture }),
  });
}

/** Room for it on a card, mm: as wide as the text of an A4 page. */
const PICTURE_MM = { widthMm: 186, heightMm: 75 } as const;

/** Every piece once. */
function piecesPicture(pieces: readonly LayablePiece[]): Drawing {
  return drawSmallPieces({ pieces, fonts: loadFontBook(), ...PICTURE_MM });
}
