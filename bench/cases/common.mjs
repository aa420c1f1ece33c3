import { createHash } from 'node:crypto';

/** Result of a case to the bench: rows of [label, values, unit], and a checksum of what was computed. */
export function report(rows, result) {
  const checksum = createHash('sha256').update(result).digest('hex').slice(0, 12);
  process.send({ rows, checksum, peakMb: process.resourceUsage().maxRSS / 1024 });
}

export function seconds(work) {
  const started = performance.now();
  const result = work();
  return { result, seconds: (performance.now() - started) / 1000 };
}
