import type { Findings } from '../../findings.js';
import { IntakeError } from '../../error.js';
import type { Vision } from '../vision/vision.js';
import type { TraceOptions, TraceStage } from './trace-options.js';

/** What all steps of tracing work with. */
export interface TraceTools {
  readonly vision: Vision;
  readonly findings: Findings;
  readonly stage: (stage: TraceStage) => void;
}

/** Says each stage before it starts; between stages is where a stop is heard. */
export function stageTeller(options: TraceOptions, file: string): (stage: TraceStage) => void {
  return (stage) => {
    if (options.isStopped?.() === true) throw new IntakeError('trace-stopped', {}, { file });
    options.onStage?.(stage);
  };
}
