import { checkLayout } from '@hidebound/leather';
import type { Diagnostic, Layout } from '@hidebound/leather';
import type { CommandResult } from '../command-context.js';
import { countWords } from '../count-words.js';
import { violationFinding } from '../copy-words.js';
import { EXIT_STATUS } from '../exit-status.js';
import { findingLines } from '../finding-words.js';
import { loadLayout, loadLayoutHides } from '../io/load-files.js';
import { gatherYieldFindings } from '../yield-findings.js';
import { percent } from '../yield-words.js';

/** Proves a layout from its file and its hides alone. */
export function checkCommand([path]: readonly string[]): CommandResult {
  const layout = loadLayout(path!);
  const check = checkLayout(layout, loadLayoutHides(layout, path!));
  const findings = [
    ...check.violations.map((violation) => violationFinding(violation, path!)),
    ...gatherYieldFindings(check.diagnostics, path!).map((finding) => withFile(finding, path!)),
  ];
  return {
    exitStatus: check.proven ? EXIT_STATUS.done : EXIT_STATUS.answerIsNo,
    lines: [
      check.proven ? provenWords(path!, layout) : brokenWords(path!, findings),
      ...findingLines(findings),
    ],
    data: {
      file: path,
      proven: check.proven,
      pieces: layout.placements.length,
      hides: layout.hides.length,
      unplaced: layout.unplaced.length,
      yield: { grossYield: layout.yield.total.grossYield, usableYield: layout.yield.total.usableYield },
      violations: check.violations,
    },
    diagnostics: findings,
  };
}

/** A finding that names no file is about the layout. */
function withFile(finding: Diagnostic, file: string): Diagnostic {
  return { ...finding, place: { file, ...finding.place } };
}

function provenWords(path: string, layout: Layout): string {
  const { placements, hides, unplaced } = layout;
  const accepted = placements.filter((placement) => placement.accepted.length > 0).length;
  const locked = placements.filter((placement) => placement.locked).length;
  const more = [
    ...(locked === 0 ? [] : [`${locked} locked in place`]),
    ...(accepted === 0 ? [] : [`${accepted} with a rule accepted by hand`]),
    ...(unplaced.length === 0 ? [] : [`${unplaced.length} asked for but not laid`]),
  ];
  const { grossYield, usableYield } = layout.yield.total;
  return (
    `${path}: proven. ${countWords(placements.length, 'piece')} on ${countWords(hides.length, 'hide')} ` +
    `${placements.length === 1 ? 'keeps' : 'keep'} every rule${more.length === 0 ? '' : ` (${more.join(', ')})`}. ` +
    `Gross yield ${percent(grossYield)}, usable yield ${percent(usableYield)}.`
  );
}

function brokenWords(path: string, findings: readonly { readonly severity: string }[]): string {
  const count = findings.filter(({ severity }) => severity === 'error').length;
  return `${path}: not proven. ${count} ${count === 1 ? 'thing is' : 'things are'} wrong:`;
}
