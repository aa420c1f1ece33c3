// Lines of a page put together as they are read: the rows of a table with their cells, and whole paragraphs.

/** Lines of one row stand so near at most, counted in the height of a word; rows stand further apart. */
const ROW_PITCH = 1.25;
/** Cells stand so far apart at least, counted in the height of a word; words of one cell stand closer. */
const CELL_GAP = 0.4;

/** The head of a section is so much larger than plain text; titles and answers are larger still. */
const HEAD_SHARE = { from: 1.2, to: 1.28 };
const TITLE_SHARE = 1.6;

/**
 * Rows from the top: `{ page, cells: [{ text, left, right }], named }`, `named` being those of the names that stand in its
 * cells, or at the start of the title or the head above.
 */
export function rowsOfLines(lines, names) {
  const plain = plainHeights(lines);
  const longestFirst = [...new Set(names)].sort((a, b) => b.length - a.length);
  const groups = [];
  for (const line of lines) {
    const last = groups.at(-1);
    if (last !== undefined && isNext(last.at(-1), line)) last.push(line);
    else groups.push([line]);
  }
  let head = '';
  let title = '';
  return groups.map((group) => {
    const row = rowOf(group);
    const text = row.cells.map((cell) => cell.text).join('\n');
    const share = heightOf(group[0]) / plain.get(row.page);
    const isHead = share > HEAD_SHARE.from && share < HEAD_SHARE.to;
    if (isHead) head = text;
    if (share > TITLE_SHARE) title = text;
    const atHead = [title, head].flatMap(
      (above) => longestFirst.find((name) => isAtStart(name, above)) ?? [],
    );
    const own = isHead ? [] : namesIn(text, longestFirst);
    return { ...row, namesNothing: own.length === 0, named: new Set([...own, ...atHead]) };
  });
}

function isAtStart(name, text) {
  return text.toLowerCase().startsWith(name.toLowerCase()) && !/[\p{L}\d]/u.test(text.charAt(name.length));
}

/** A name within a longer one that stands there is not meant. */
function namesIn(text, longestFirst) {
  let rest = text;
  return longestFirst.filter((name) => {
    const parts = rest.split(new RegExp(`(?<![\\p{L}\\d])${escape(name)}(?![\\p{L}\\d])`, 'u'));
    rest = parts.join('\n');
    return parts.length > 1;
  });
}

function escape(text) {
  return text.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&');
}

function heightOf({ words }) {
  return Math.max(...words.map(({ height }) => height));
}

/** The height of most words of each page: pages that must hold more are set smaller. */
function plainHeights(lines) {
  const pages = new Set(lines.map(({ page }) => page));
  const heights = (page) =>
    lines.filter((line) => line.page === page).flatMap(({ words }) => words.map(({ height }) => height));
  return new Map([...pages].map((page) => [page, commonest(heights(page))]));
}

/** The number that comes most often, to a tenth. */
function commonest(numbers) {
  const counts = new Map();
  for (const number of numbers) {
    const rounded = Math.round(10 * number) / 10;
    counts.set(rounded, (counts.get(rounded) ?? 0) + 1);
  }
  return [...counts].sort((a, b) => b[1] - a[1])[0]?.[0] ?? 0;
}

function isNext(above, below) {
  if (above.page !== below.page || below.y - above.y > ROW_PITCH * heightOf(below)) return false;
  return Math.abs(heightOf(above) - heightOf(below)) < 0.5 * heightOf(below);
}

function rowOf(lines) {
  const cells = [];
  for (const fragment of lines.flatMap(fragmentsOf)) {
    const over = cells.find((cell) => cell.right > fragment.left && cell.left < fragment.right);
    if (over === undefined) cells.push(fragment);
    else {
      over.text += ` ${fragment.text}`;
      over.left = Math.min(over.left, fragment.left);
      over.right = Math.max(over.right, fragment.right);
    }
  }
  return { page: lines[0].page, cells };
}

/** Words of a line that stand close together. */
function fragmentsOf({ words }) {
  const fragments = [];
  for (const { text, left, right, height } of words) {
    const last = fragments.at(-1);
    if (last !== undefined && left - last.right < CELL_GAP * height) {
      last.text += ` ${text}`;
      last.right = right;
    } else fragments.push({ text, left, right });
  }
  return fragments;
}
