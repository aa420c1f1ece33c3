import type { TraceStage } from '@hidebound/intake/photo';
import type { CommandContext } from '../command-context.js';

/** What is told of each stage while it runs. */
const STAGE_WORDS: Readonly<Record<TraceStage, string>> = {
  references: 'looking for reference sheets',
  floor: 'finding out where the camera stood',
  straighten: 'straightening the photo',
  outline: 'tracing the edge of the hide',
  chalk: 'reading what is chalked on it',
  'other side': 'laying the other side onto it',
  candidates: 'looking for possible flaws',
  backbone: 'guessing the backbone',
};

/** Stages as plain lines on standard error, with the seconds that have gone by. */
export function tellStages(context: CommandContext): (stage: TraceStage | 'load') => void {
  const started = context.now();
  return (stage) => {
    const seconds = ((context.now() - started) / 1000).toFixed(1);
    context.err(`${seconds} s: ${stage === 'load' ? 'opening the photo' : STAGE_WORDS[stage]}\n`);
  };
}
