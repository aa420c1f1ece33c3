import { loadVision, traceHide } from '@hidebound/intake/photo';
import { writeHide } from '@hidebound/leather';

/** A decoded photo as a page hands it to a worker. */
export interface TraceJob {
  readonly file: string;
  readonly width: number;
  readonly height: number;
  readonly rgb: Uint8Array;
}

/** Photo in, hide file out, through the same packages in Node and in a browser. */
export async function traceJob(photo: TraceJob): Promise<string> {
  const { vision } = await loadVision();
  const options = { id: 'in-browser', sideUp: 'grain', pictureFile: 'in-browser.straight.jpg' } as const;
  return writeHide(traceHide([photo], options, vision).hide);
}
