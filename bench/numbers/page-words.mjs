// The words of a PDF's pages with their places, as poppler's pdftotext reads them.
import { spawnSync } from 'node:child_process';

/** Words on one line stand at most so far apart in height, in points. */
const LINE_SLACK_PT = 2;

/** Whether poppler's pdftotext is there. */
export function hasPoppler() {
  return spawnSync('pdftotext', ['-v'], { stdio: 'ignore' }).error === undefined;
}

/**
 * The lines of a PDF from the top of each page: `{ page, y, words: [{ text, left, right }] }`, places in points.
 * Words are never taken together: two columns of a table may stand close.
 */
export function linesOfPdf(file) {
  const run = spawnSync('pdftotext', ['-bbox', file, '-'], { encoding: 'utf8', maxBuffer: 1 << 28 });
  if (run.status !== 0) throw new Error(`pdftotext could not read ${file}: ${run.stderr}`);
  return run.stdout
    .split('<page ')
    .slice(1)
    .flatMap((text, index) => linesOfPage(text, index + 1));
}

function linesOfPage(text, page) {
  const word = /<word xMin="([\d.-]+)" yMin="([\d.-]+)" xMax="([\d.-]+)" yMax="([\d.-]+)">(.*?)<\/word>/gs;
  const words = [...text.matchAll(word)].map(([, left, top, right, bottom, inner]) => ({
    text: plain(inner),
    left: Number(left),
    right: Number(right),
    y: (Number(top) + Number(bottom)) / 2,
    height: Number(bottom) - Number(top),
  }));
  const lines = [];
  for (const each of words.sort((a, b) => a.y - b.y)) {
    const last = lines.at(-1);
    if (last !== undefined && each.y - last.y <= LINE_SLACK_PT) last.words.push(each);
    else lines.push({ page, y: each.y, words: [each] });
  }
  for (const line of lines) line.words.sort((a, b) => a.left - b.left);
  return lines;
}

function plain(text) {
  return text
    .replace(/&lt;/g, '<')
    .replace(/&gt;/g, '>')
    .replace(/&quot;/g, '"')
    .replace(/&#39;|&apos;/g, "'")
    .replace(/&amp;/g, '&');
}
