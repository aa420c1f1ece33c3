// Lines of a page put together as they are read: the rows of a table with their cells, and whole paragraphs.

/** Lines of one row stand so near at most, counted in the height of a word; rows stand further apart. */
const ROW_PITCH = 1.25;
/** Cells stand so far apart at least, counted in the height of a word; words of one cell stand closer. */
const CELL_GAP = 0.4;

/** Rows from the top: `{ page, cells: [{ text, left, right }], words }`, `words` being those of all its cells. */
export function rowsOfLines(lines) {
  const rows = [];
  for (const line of lines) {
    const last = rows.at(-1);
    if (last !== undefined && isNext(last.at(-1), line)) last.push(line);
    else rows.push([line]);
  }
  return rows.map(rowOf);
}

function isNext(above, below) {
  const heights = (line) => line.words.map(({ height }) => height);
  if (above.page !== below.page || below.y - above.y > ROW_PITCH * Math.max(...heights(below))) return false;
  return (
    Math.abs(Math.max(...heights(above)) - Math.max(...heights(below))) < 0.5 * Math.max(...heights(below))
  );
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
  const words = cells.flatMap(({ text }) => text.split(' '));
  const bare = words.map((word) => word.replace(/[.,:;()]+$|^[(]/g, ''));
  return { page: lines[0].page, cells, words: new Set([...words, ...bare]) };
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
