import type { NestProblem } from '../types/problem.js';

/** What this engine can't honour, by code; `where` names the item or sheet that asks for it. */
export interface NestRefusal {
  readonly code: NestRefusalCode;
  readonly where?: string;
}

export type NestRefusalCode = 'lanes-in-open-sets';

/** All that this engine would have to ignore in the problem; empty: it honours every field. */
export function refuseUnsupported(problem: NestProblem): NestRefusal[] {
  const lanes = new Set(problem.items.filter(({ lane }) => lane !== undefined).map(({ id }) => id));
  return problem.setKinds
    .filter(({ sets, members }) => {
      const isOpen = sets === 'many' || problem.objective.mode === 'sets';
      return isOpen && members.some(({ item }) => lanes.has(item));
    })
    .map(({ id }) => ({ code: 'lanes-in-open-sets', where: id }));
}
