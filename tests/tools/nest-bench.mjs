// What the nesting bench is made of, for its tests.
export { layGreedily } from '../../bench/nest/baseline-greedy.mjs';
export { layBoxes } from '../../bench/nest/baseline-skyline.mjs';
export { doubleLatticeDensity } from '../../bench/nest/double-lattice.mjs';
export { growRing } from '../../bench/nest/grow-ring.mjs';
export { measure } from '../../bench/nest/measure.mjs';
export { readBins } from '../../bench/nest/read-bins.mjs';
export { readLeather } from '../../bench/nest/read-leather.mjs';
export { readStrip } from '../../bench/nest/read-strip.mjs';
export { clipToBox, ringArea } from '../../bench/nest/rings.mjs';
export { exponent } from '../../bench/nest/tables.mjs';
