import { costReport, quoteReport } from '@hidebound/render';
import type { Report } from '@hidebound/render';
import { listWords, quoteValue } from '@hidebound/leather';
import type { CustomerCost } from '@hidebound/leather';
import { CliError } from '../cli-error.js';
import type { CommandResult, OptionValues } from '../command-context.js';
import { textOption } from '../command-context.js';
import { loadCosts } from '../costing/cost-source.js';
import type { CostSource } from '../costing/cost-source.js';
import { EXIT_STATUS } from '../exit-status.js';
import { findingLines } from '../finding-words.js';
import { refuseOverwriting, writeFilesSafely } from '../io/write-safely.js';
import { reportLines } from '../report-lines.js';
import { refuseReportNames, reportFiles } from '../report-output.js';

/** Reckons what a layout or an order costs, and prints it for the workshop or as a quote for the customer. */
export async function costCommand([path]: readonly string[], options: OptionValues): Promise<CommandResult> {
  refuseReportNames(options);
  refuseForAlone(options);
  const source = await loadCosts(path!, textOption(options, 'workshop'));
  const diagnostics = [...source.diagnostics, ...source.sheet.diagnostics];
  const data = {
    file: path,
    ...(source.inUse === undefined ? {} : { workshop: source.inUse.file }),
    estimate: source.isEstimate,
    cost: costData(source),
  };
  if (options['quote'] === true && source.sheet.withoutPrice.length > 0) {
    return {
      exitStatus: EXIT_STATUS.answerIsNo,
      lines: [...findingLines(diagnostics), 'No quote is written while something has no price.'],
      data: { ...data, written: [] },
      diagnostics,
    };
  }
  const reports = options['quote'] === true ? quotes(source, textOption(options, 'for')) : [costPage(source)];
  const files = await reportFiles(reports, options);
  const written = files.map((file) => file.path);
  refuseOverwriting(written, source.paths);
  writeFilesSafely(files);
  return {
    exitStatus: EXIT_STATUS.done,
    lines: [
      ...findingLines(diagnostics),
      ...(diagnostics.length === 0 ? [] : ['']),
      ...reports.flatMap((report, i) => [...(i === 0 ? [] : ['']), ...reportLines(report)]),
      ...(written.length === 0 ? [] : ['']),
      ...written.map((file) => `The page is in ${file}`),
    ],
    data: { ...data, written },
    diagnostics,
  };
}

function refuseForAlone(options: OptionValues): void {
  if (textOption(options, 'for') === undefined || options['quote'] === true) return;
  throw new CliError('bad-use', '--for chooses whom a quote is for; give --quote with it.');
}

/** The findings stand apart in the result. */
function costData({ sheet }: CostSource): Readonly<Record<string, unknown>> {
  const { diagnostics: _, ...rest } = sheet;
  return rest;
}

function costPage({ sheet, order, isEstimate }: CostSource): Report {
  const subtitle = `${order.name}, version ${order.version}, ${order.date}`;
  return costReport({ sheet, subtitle, isEstimate });
}

function quotes({ sheet, order, workshop, isEstimate }: CostSource, who: string | undefined): Report[] {
  return askedCustomers(sheet.customers, who).map((customer) =>
    quoteReport({
      sheet,
      customer,
      order,
      isEstimate,
      ...(workshop.name === undefined ? {} : { workshop: workshop.name }),
    }),
  );
}

function askedCustomers(
  customers: readonly CustomerCost[],
  who: string | undefined,
): readonly CustomerCost[] {
  if (who === undefined) return customers;
  const asked = customers.filter((customer) => customer.for === who);
  if (asked.length > 0) return asked;
  const names = customers.flatMap((customer) =>
    customer.for === undefined ? [] : [quoteValue(customer.for)],
  );
  throw new CliError(
    'bad-use',
    names.length === 0
      ? 'The order names no customers; write "for" into its articles, or leave out --for.'
      : `The order has nothing for ${quoteValue(who)}; give --for one of ${listWords(names)}.`,
  );
}
