import type { NestProblem } from '../types/problem.js';

/** What this engine can't honour, by code; `where` names the item or sheet that asks for it. */
export interface NestRefusal {
  readonly code: NestRefusalCode;
  readonly where?: string;
}

export type NestRefusalCode = 'fill' | 'strip' | 'lanes' | 'rough-cuts' | 'open-length' | 'streams';

/** All that this engine would have to ignore in the problem; empty: it honours every field. */
export function refuseUnsupported(problem: NestProblem): NestRefusal[] {
  const refusals: NestRefusal[] = [];
  const { mode } = problem.objective;
  if (mode === 'fill' || mode === 'strip') refusals.push({ code: mode });
  for (const item of problem.items) {
    if (item.lane !== undefined) refusals.push({ code: 'lanes', where: item.id });
    if (item.roughMargin !== undefined) refusals.push({ code: 'rough-cuts', where: item.id });
  }
  for (const sheet of problem.sheets) {
    if (sheet.openLength === true) refusals.push({ code: 'open-length', where: sheet.id });
  }
  if (problem.budget.streams !== 1) refusals.push({ code: 'streams' });
  return refusals;
}
