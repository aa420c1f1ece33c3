// Reads one PDF in a process of its own and prints what came of it: for files that may take all memory or time.
import { readFileSync } from 'node:fs';
import { IntakeError } from '../../packages/intake/src/error.js';
import { readPatternPdf } from '../../packages/intake/src/pattern-pdf.js';

const bytes = readFileSync(process.argv[2]!);
const { push } = Array.prototype;
const started = performance.now();
let outcome: string;
try {
  const read = await readPatternPdf(bytes, { file: 'pattern.pdf' });
  outcome = `read, ${read.pages?.reduce((sum, { lines }) => sum + lines.length, 0) ?? 0} lines`;
} catch (reason) {
  outcome = reason instanceof IntakeError ? reason.code : `thrown: ${String(reason)}`;
}
// Anything printed before the last line counts as noise.
if (Array.prototype.push !== push) console.log('Array.prototype.push was replaced.');
const seconds = (performance.now() - started) / 1000;
const peakMb = process.resourceUsage().maxRSS / 1024;
console.log(JSON.stringify({ outcome, seconds: Number(seconds.toFixed(2)), peakMb: Math.round(peakMb) }));
process.exit(0);
