import { PITCH_PER_THREAD, PITCH_PER_THREAD_SLACK } from './stitch-constants.js';

/** What the thread of one seam depends on, in mm. */
export interface ThreadOfSeam {
  /** From the first hole to the last one. */
  readonly lengthMm: number;
  readonly pitchMm: number;
  /** All that the needle goes through. */
  readonly stackMm: number;
  readonly tailsMm: number;
}

/**
 * Thread for a saddle stitch, in mm: 2 L (1 + T / p) + tails. Both ends run along every stitch, once on each face, and
 * both pass through the stack at every hole. So a thin stack takes less than the rules of thumb (3.5 and 4 times the
 * seam), and one that is thicker than its pitch takes more.
 */
export function threadLengthMm({ lengthMm, pitchMm, stackMm, tailsMm }: ThreadOfSeam): number {
  return 2 * lengthMm * (1 + stackMm / pitchMm) + tailsMm;
}

/** Whether the pitch suits the thread: 5 to 6 thicknesses of it, roughly; from memory, a hint only. */
export function pitchSuitsThread(pitchMm: number, threadMm: number): 'suits' | 'too near' | 'too far' {
  const ratio = pitchMm / threadMm;
  if (ratio < PITCH_PER_THREAD.min * (1 - PITCH_PER_THREAD_SLACK)) return 'too near';
  return ratio > PITCH_PER_THREAD.max * (1 + PITCH_PER_THREAD_SLACK) ? 'too far' : 'suits';
}
