import type { Figure } from '../model/workshop-rules.js';

/** Figures of buying that a user may know better. */
export const BUYING_FIGURES: readonly Figure[] = [
  {
    name: 'error of a stated area',
    words: 'How far the area written on a hide may be from the measured one',
    value: { min: 2, max: 3 },
    unit: '%',
    source: 'from memory',
  },
  {
    name: 'need beyond the three losses',
    words:
      'What first layouts take beyond the three losses by formula, because unlike pieces stand in each other’s way',
    value: { min: 15, max: 50 },
    unit: '%',
    source: 'measured: bench/buy, trial layouts',
  },
  {
    name: 'need of straps beyond the three losses',
    words: 'The same for straps side by side, which need long sound runs of leather',
    value: { min: 40, max: 160 },
    unit: '%',
    source: 'measured: bench/buy, trial layouts',
  },
  {
    name: 'gain of a longer search',
    words: 'How much less leather a long search for a layout takes than a first layout',
    value: { min: 2, max: 10 },
    unit: '%',
    source: 'measured: bench/buy, the demo orders on trial hides',
  },
  {
    name: 'spread of needs',
    words: 'How far the leather that an order takes differs from hide to hide, as long as few trials tell it',
    value: { min: 10, max: 30 },
    unit: '%',
    source: 'measured: bench/buy, the demo orders on trial hides',
  },
  {
    name: 'spread beyond trial hides',
    words: 'How far real hides differ from trial hides in the leather that they give',
    value: { min: 10, max: 20 },
    unit: '%',
    source: 'measured: bench/buy, hides that are smaller, larger and more marked than the trial hides',
  },
];
