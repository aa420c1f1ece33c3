import type { Figure } from '../../model/workshop-rules.js';

/** Names of the figures, for those who look them up. */
export const STRIP_AT_EDGE = 'strip lost at the edge';
export const FLAWS_FROM_WIDTH = 'width from which flaws cost more';
export const FLAWS_DOUBLE_WIDTH = 'width that doubles what flaws cost';

/** Figures of the losses of leather that a user may know better. */
export const LOSSES_FIGURES: readonly Figure[] = [
  {
    name: STRIP_AT_EDGE,
    words: 'How wide a strip along a hide’s edge holds no piece, in widths of the mean piece',
    value: { min: 0.3, max: 0.6 },
    unit: 'times',
    source:
      'measured: 96 first layouts of rectangles, 8 to 300 to the hide, on flawless trial sides and double shoulders: 0.24 to 1.04, half of them 0.38 to 0.59',
  },
  {
    name: FLAWS_FROM_WIDTH,
    words: 'Pieces up to this width lose to flaws only what the hide’s grade says',
    value: { min: 0, max: 100 },
    unit: 'mm',
    source: 'from memory: grades are judged by a shoe’s quarter, about 100 mm wide',
  },
  {
    name: FLAWS_DOUBLE_WIDTH,
    words:
      'Pieces that are wider by this lose twice that, because no piece lies in narrow leather between flaws',
    value: { min: 60, max: 140 },
    unit: 'mm',
    source:
      'own, not a fit: grades count some of it already; rectangles of one kind, 41 to 224 mm wide, lost 1.8 to 3.0 times what flaws cover on trial sides of 88 %, 1.9 to 5.1 times on 95 %',
  },
];
