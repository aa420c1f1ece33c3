import { formatArea } from '@hidebound/leather';
import { tell } from '../../findings.js';
import type { Findings } from '../../findings.js';
import type { TraceOptions } from './trace-options.js';

/** Damp and dry leather differ by 1 to 2 %; beyond this, one of the two figures is wrong (common practice). */
const AREA_AGREES_WITHIN = 0.03;

/** Tells where the invoice and the photo do not agree. */
export function checkArea(
  measuredMm2: number,
  errorShare: number,
  { invoicedMm2 }: TraceOptions,
  findings: Findings,
): void {
  if (invoicedMm2 === undefined || invoicedMm2 === 0) return;
  const difference = measuredMm2 / invoicedMm2 - 1;
  if (Math.abs(difference) <= AREA_AGREES_WITHIN) return;
  tell(findings, 'warning', 'area-differs', {
    invoiced: bothUnits(invoicedMm2),
    measured: bothUnits(measuredMm2),
    difference: (100 * difference).toFixed(1),
    error: (100 * errorShare).toFixed(1),
  });
}

function bothUnits(mm2: number): string {
  return `${formatArea(mm2, { unit: 'm2' })} (${formatArea(mm2, { unit: 'ft2' })})`;
}
