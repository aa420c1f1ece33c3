import type { WordTable } from '../words.js';
import { BENCH_DE } from './bench.js';
import { FIELD_DE } from './field.js';
import { HIDE_DE } from './hide.js';
import { LAY_DE } from './lay.js';
import { MAKE_DE } from './make.js';
import { MARKS_DE } from './marks.js';
import { NEXT_DE } from './next.js';
import { PIECES_DE } from './pieces.js';
import { SHELL_DE } from './shell.js';
import { TRADE_DE } from './trade.js';

/** Alle Texte auf Deutsch. */
export const DE: WordTable = {
  ...SHELL_DE,
  ...FIELD_DE,
  ...HIDE_DE,
  ...MARKS_DE,
  ...PIECES_DE,
  ...LAY_DE,
  ...MAKE_DE,
  ...BENCH_DE,
  ...NEXT_DE,
  ...TRADE_DE,
};
