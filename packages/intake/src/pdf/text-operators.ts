import { spendClipWork } from './budget.js';
import { isSeen } from './clip-curve.js';
import { OP } from './operators.js';
import { isUnseen, sourceOf } from './page-walk.js';
import type { PageWalk } from './page-walk.js';
import { affineOf } from './state.js';
import type { TextState } from './state.js';
import { TEXT_START, nextTextLine, showText } from './text-runs.js';
import type { Glyph, TextRun } from './text-runs.js';

/** Render mode of letters that are not painted (ISO 32000-1, table 106). */
const INVISIBLE = 3;
/** Letters that only clip. */
const CLIP_ONLY = 7;

/** Text state and text-showing operators (ISO 32000-1, sections 9.3 and 9.4). */
export function followText(walk: PageWalk, op: number, operands: readonly unknown[]): void {
  const [x, y] = [Number(operands[0]), Number(operands[1])];
  switch (op) {
    case OP.beginText:
      walk.text = TEXT_START;
      return;
    case OP.setTextMatrix: {
      const matrix = affineOf(operands[0] as ArrayLike<number>);
      walk.text = { letters: matrix, line: matrix };
      return;
    }
    case OP.moveText:
      walk.text = nextTextLine(walk.text, x, y);
      return;
    case OP.setLeadingMoveText:
      setText(walk, { leading: -y });
      walk.text = nextTextLine(walk.text, x, y);
      return;
    case OP.nextLine:
      walk.text = nextTextLine(walk.text, 0, -walk.state.text.leading);
      return;
    case OP.showText:
      return show(walk, operands[0] as readonly Glyph[]);
    default:
      return setText(walk, textStateOf(op, operands, x));
  }
}

function textStateOf(op: number, operands: readonly unknown[], x: number): Partial<TextState> {
  switch (op) {
    case OP.setCharSpacing:
      return { charSpacing: x };
    case OP.setWordSpacing:
      return { wordSpacing: x };
    case OP.setHScale:
      return { horizontalScale: x / 100 };
    case OP.setLeading:
      return { leading: x };
    case OP.setFont:
      return { font: String(operands[0]), size: Number(operands[1]) };
    case OP.setTextRenderingMode:
      return { renderingMode: x };
    case OP.setTextRise:
      return { rise: x };
    default:
      return {};
  }
}

function setText(walk: PageWalk, change: Partial<TextState>): void {
  walk.state = { ...walk.state, text: { ...walk.state.text, ...change } };
}

function show(walk: PageWalk, glyphs: readonly Glyph[]): void {
  const { run, matrices } = showText(glyphs, walk.text, walk.state);
  walk.text = matrices;
  const mode = walk.state.text.renderingMode;
  if (run === undefined || mode === INVISIBLE || mode === CLIP_ONLY || isUnseen(walk)) return;
  const isThere = Number.isFinite(run.at.x + run.at.y + run.end.x + run.end.y);
  if (!isThere || !isPartSeen(run, walk)) return;
  walk.texts++;
  walk.runs.push({ ...run, source: sourceOf(walk, 'text', walk.texts) });
}

/** A page's edge may have cut off letters: what shows any of a text has the whole of it. */
function isPartSeen({ at, end }: TextRun, { state, budget }: PageWalk): boolean {
  const middle = { x: (at.x + end.x) / 2, y: (at.y + end.y) / 2 };
  return [at, middle, end].some((p) => isSeen(p, state.clip, (work) => spendClipWork(budget, work)));
}
