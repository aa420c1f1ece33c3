import { DEFAULT_WORKSHOP, suitOrder } from '@hidebound/leather';
import type { ResolvedOrder } from '@hidebound/leather';
import { suitReport } from '@hidebound/render';
import type { CommandResult, OptionValues } from '../command-context.js';
import { textOption, textsOption } from '../command-context.js';
import { EXIT_STATUS } from '../exit-status.js';
import { findingLines } from '../finding-words.js';
import { loadOrderPlan } from '../io/load-order.js';
import { loadWorkshop } from '../io/load-workshop.js';
import { refuseOverwriting, writeFilesSafely } from '../io/write-safely.js';
import { reportLines } from '../report-lines.js';
import { refuseReportNames, reportFiles } from '../report-output.js';
import { hidesOnHand } from '../suit/hides-on-hand.js';

/** Says which hide fits which piece of an order, and what is to be done to it. */
export async function suitCommand(
  [orderPath]: readonly string[],
  options: OptionValues,
): Promise<CommandResult> {
  refuseReportNames(options);
  const inUse = loadWorkshop(textOption(options, 'workshop'), orderPath!);
  const workshop = inUse?.workshop ?? DEFAULT_WORKSHOP;
  const { written, order, pieces } = await loadOrderPlan(orderPath!, workshop);
  const onHand = hidesOnHand(order, orderPath!, {
    stock: textOption(options, 'stock'),
    files: textsOption(options, 'hide'),
  });
  const suit = suitOrder({ written, order, pieces, hides: onHand.hides, workshop });
  const diagnostics = [...onHand.diagnostics, ...suit.diagnostics];
  const subtitle = subtitleOf(order);
  const files = await reportFiles(suitReport(suit, { subtitle, warnings: diagnostics }), options);
  const names = files.map(({ path }) => path);
  refuseOverwriting(names, [orderPath!, ...onHand.paths, ...(inUse === undefined ? [] : [inUse.file])]);
  writeFilesSafely(files);
  return {
    exitStatus: suit.isSuited ? EXIT_STATUS.done : EXIT_STATUS.answerIsNo,
    lines: [
      ...findingLines(diagnostics),
      ...(diagnostics.length === 0 ? [] : ['']),
      ...reportLines(suitReport(suit, { subtitle, warnings: [] })),
      ...(names.length === 0 ? [] : ['']),
      ...names.map((name) => `The page is in ${name}`),
    ],
    data: {
      file: orderPath,
      ...(inUse === undefined ? {} : { workshop: inUse.file }),
      suited: suit.isSuited,
      hides: suit.hides,
      pieces: suit.pieces,
      written: names,
    },
    diagnostics,
  };
}

function subtitleOf({ name, version, date }: ResolvedOrder): string {
  return `${name}, version ${version}, ${date}`;
}
