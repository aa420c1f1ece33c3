import type { Iron, StitchRule, StitchWish } from '../model/stitch.js';
import type { Workshop } from '../model/workshop.js';
import { trimmed } from '../units/length.js';
import { nearestWord } from '../words/nearest.js';
import { leatherError } from '../words/refuse.js';
import { quoteValue } from '../words/sentence.js';
import { DEFAULT_IRONS } from './irons.js';
import {
  DEFAULT_ADJUST_SHARE,
  DEFAULT_CORNER_DEG,
  DEFAULT_END_GAP_MM,
  DEFAULT_GATHER_SHARE,
  DEFAULT_TAILS_MM,
} from './stitch-constants.js';

/** What a workshop says of stitching. */
export type StitchWorkshop = Partial<Pick<Workshop, 'irons' | 'stitch'>>;

/**
 * The rule for a piece's stitch lines: what the piece says wins, then its article, then the workshop, then the
 * built-in figures. Undefined where nobody gives a pitch or an iron: none is guessed.
 * @throws LeatherError `no-such-iron`
 */
export function stitchRuleFor(
  piece: StitchWish | undefined,
  article: StitchWish | undefined,
  workshop: StitchWorkshop = {},
): StitchRule | undefined {
  const wishes = [piece, article, workshop.stitch].filter((wish) => wish !== undefined);
  const tool = wishes.find(({ pitchMm, iron }) => pitchMm !== undefined || iron !== undefined);
  if (tool === undefined) return undefined;
  const wish: StitchWish = Object.assign({}, ...[...wishes].reverse()) as StitchWish;
  const pitchMm = tool.pitchMm ?? ironOf(tool.iron!, workshop.irons ?? DEFAULT_IRONS).pitchMm;
  return {
    pitchMm,
    with: wish.with ?? 'iron',
    gives: wish.gives ?? 'both ends',
    adjustShare: wish.adjustShare ?? DEFAULT_ADJUST_SHARE,
    cornerDeg: wish.cornerDeg ?? DEFAULT_CORNER_DEG,
    endGapMm: wish.endGapMm ?? DEFAULT_END_GAP_MM,
    gatherShare: wish.gatherShare ?? DEFAULT_GATHER_SHARE,
    tailsMm: wish.tailsMm ?? DEFAULT_TAILS_MM,
    ...(wish.thread === undefined ? {} : { thread: wish.thread }),
    ...(wish.stackMm === undefined ? {} : { stackMm: wish.stackMm }),
    leaveOut: wish.leaveOut ?? [],
  };
}

/** An iron of the table by its name or by its pitch. */
function ironOf(asked: string | number, irons: readonly Iron[]): Iron {
  const title = typeof asked === 'number' ? `${trimmed(asked, 3)} mm` : asked;
  const found = irons.find(({ name }) => name === title) ?? irons.find(({ pitchMm }) => pitchMm === asked);
  if (found !== undefined) return found;
  const iron = typeof asked === 'number' ? title : quoteValue(asked);
  const names = irons.map(({ name }) => name);
  const near = typeof asked === 'number' ? undefined : nearestWord(asked, names);
  const params = { iron, known: names.join(', ') };
  throw leatherError('no-such-iron', near === undefined ? params : { ...params, near });
}
