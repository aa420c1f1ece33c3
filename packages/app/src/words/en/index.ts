import { BENCH_EN } from './bench.js';
import { FIELD_EN } from './field.js';
import { HIDE_EN } from './hide.js';
import { LAY_EN } from './lay.js';
import { MAKE_EN } from './make.js';
import { MARKS_EN } from './marks.js';
import { NEXT_EN } from './next.js';
import { PIECES_EN } from './pieces.js';
import { SHELL_EN } from './shell.js';
import { TRADE_EN } from './trade.js';

/** All texts in English; the other languages have the same keys. */
export const EN = {
  ...SHELL_EN,
  ...FIELD_EN,
  ...HIDE_EN,
  ...MARKS_EN,
  ...PIECES_EN,
  ...LAY_EN,
  ...MAKE_EN,
  ...BENCH_EN,
  ...NEXT_EN,
  ...TRADE_EN,
} as const;
