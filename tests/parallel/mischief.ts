import type { UnitOfWork } from '@hidebound/geometry/parallel';

/** What a worker of these tests does between two units of work. */
export type Mischief = 'none' | 'low-streams-slow' | 'high-streams-slow' | 'stuck' | 'throw' | 'exit';

/** Where the last three kinds strike. */
export const STRIKES_IN_JOIN = 2;

/** Real streams have thousands of units in a join: of those only the first and then few are delayed. */
const UNITS_DELAYED = 16;
const DELAYED_EVERY = 256;

/** Uneven delays of some ms, told by the unit; or what breaks a worker. */
export function mischiefBetweenUnits(mischief: Mischief, exit: () => void): (at: UnitOfWork) => void {
  return ({ stream, join, unit }) => {
    if (unit <= UNITS_DELAYED || unit % DELAYED_EVERY === 0) {
      const uneven = (7 * unit + 5 * join + 3 * stream) % 4;
      if (mischief === 'low-streams-slow') sleep(uneven + (stream < 2 ? 4 : 0));
      if (mischief === 'high-streams-slow') sleep(uneven + (stream > 2 ? 4 : 0));
    }
    if (join !== STRIKES_IN_JOIN || stream !== 1) return;
    if (mischief === 'stuck') spin(Infinity);
    if (mischief === 'throw') throw new Error('mischief');
    if (mischief === 'exit') exit();
  };
}

/** Lets the others run meanwhile; a page that may not share memory can only spin. */
function sleep(ms: number): void {
  if (typeof SharedArrayBuffer === 'undefined') spin(ms);
  else Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, ms);
}

function spin(ms: number): void {
  const end = performance.now() + ms;
  while (performance.now() < end);
}
