import { INTAKE_SENTENCES, readHideSvg } from '@hidebound/intake';
import type { DrawnHide, RawPhoto } from '../photo-tasks.js';
import { told } from '../told.js';

/**
 * A hide from an SVG that somebody traced.
 * @throws IntakeError
 */
export function readDrawnHide({ file, bytes, id }: RawPhoto & { readonly id: string }): DrawnHide {
  const { hide, diagnostics } = readHideSvg(bytes, { file, id });
  return {
    hide,
    findings: diagnostics.map((finding) => ({ ...finding, ...told(finding, [INTAKE_SENTENCES]) })),
  };
}
