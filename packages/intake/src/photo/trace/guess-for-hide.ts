import type { Polyline } from '@hidebound/geometry';
import type { HideCut, HideGuess } from '@hidebound/leather';
import { tell } from '../../findings.js';
import type { Findings } from '../../findings.js';
import type { FoundOutline } from '../outline/find-outlines.js';
import { guessBackbone } from '../outline/guess-backbone.js';
import type { TraceOptions } from './trace-options.js';

/** What the shape of the hide tells, and what of it is only a guess. */
export interface GuessedShape {
  readonly backbone?: Polyline;
  readonly cut: HideCut;
  readonly guessed: readonly HideGuess[];
  /** 0 to 1. */
  readonly confidence: number;
}

/** Cuts that have no backbone on them, so that none is missed. */
const WITHOUT_BACKBONE: readonly HideCut[] = ['belly', 'panel', 'offcut'];

/** Backbone and cut; what nobody said is told as a guess. */
export function guessForHide(piece: FoundOutline, options: TraceOptions, findings: Findings): GuessedShape {
  const { backbone, cut, confidence } = guessBackbone(piece.outline, piece.openings, options.cut);
  const guessed: HideGuess[] = [];
  if (backbone !== undefined) {
    guessed.push('backbone');
    tell(findings, 'note', 'backbone-guessed', { confidence: Math.round(100 * confidence) });
  } else if (!WITHOUT_BACKBONE.includes(options.cut ?? cut)) {
    tell(findings, 'note', 'no-backbone-guessed');
  }
  if (options.cut === undefined) {
    guessed.push('cut');
    tell(findings, 'note', 'cut-guessed', { cut });
  }
  const known = { cut: options.cut ?? cut, guessed, confidence };
  return backbone === undefined ? known : { ...known, backbone };
}
