import type { Measures } from '../../words/measures.js';
import type { MakeChoices } from '../../work/make-tasks.js';

/** As the commands have them, on the paper that goes with the units. */
export function firstChoices({ lengthUnit }: Pick<Measures, 'lengthUnit'>): MakeChoices {
  const paper = lengthUnit === 'in' ? 'Letter' : 'A4';
  return {
    page: paper,
    side: 'grain',
    photo: true,
    template: { kind: 'pieces', paper, rollMm: 914, overlapMm: 10, marginMm: 10 },
    cut: {
      format: 'dxf',
      version: 'R12',
      choice: 'pieces',
      leadInMm: 0,
      leadInKind: 'straight',
      bridges: 0,
      bridgeMm: 1,
      overcutMm: 0,
      marks: true,
      frame: false,
      labels: false,
    },
    start: '',
    sheets: '1-4',
    referencePaper: paper,
  };
}
