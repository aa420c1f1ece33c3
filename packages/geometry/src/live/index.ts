export { liftPiece, movePiece, openBench } from './bench.js';
export type { Bench, BenchExtras, SheetPlace } from './bench.js';
export { judgeMove } from './judge-move.js';
export { lockedProblem } from './locked-problem.js';
export type { LockedCopy } from './locked-problem.js';
export { snapTo } from './snap.js';
export type { Snap, SnapOptions } from './snap.js';
