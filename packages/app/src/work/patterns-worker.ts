import { keptPatterns } from './patterns/kept-patterns.js';
import { paintFace } from './patterns/paint-face.js';
import { readBoard } from './patterns/read-board.js';
import { showPattern } from './patterns/show-pattern.js';
import { suitPieces } from './patterns/suit-pieces.js';
import type { PatternTasks } from './patterns-tasks.js';
import { serveTasks } from './serve-tasks.js';

const kept = keptPatterns();

serveTasks<PatternTasks>({
  readBoard: (input) => readBoard(kept.withPatterns(input), kept.read),
  readPattern: (input) => showPattern(kept, input),
  suit: (input) => suitPieces(kept.withPatterns(input), kept.read),
  paintFace: (input) => paintFace(kept.withPatterns(input), kept.read, input),
});
