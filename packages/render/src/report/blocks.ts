import type { ReportBlock, ReportColumn } from './report.js';

/** A column of a table; figures stand at the right. */
export function column(head: string, align: ReportColumn['align'] = 'left'): ReportColumn {
  return { head, align };
}

/** The head of what follows. */
export function section(title: string): ReportBlock {
  return { kind: 'section', title };
}
