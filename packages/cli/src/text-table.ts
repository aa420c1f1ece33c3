/** Columns of text, set apart by two spaces; numbers (columns named in `right`) stand at the right. */
export function textTable(
  head: readonly string[],
  rows: readonly (readonly string[])[],
  right: readonly number[] = [],
): readonly string[] {
  const all = [head, ...rows];
  const widths = head.map((_, column) => Math.max(...all.map((row) => lengthOf(row[column] ?? ''))));
  const cell = (row: readonly string[], column: number): string => {
    const text = row[column] ?? '';
    const space = ' '.repeat(Math.max(0, widths[column]! - lengthOf(text)));
    return right.includes(column) ? space + text : text + space;
  };
  const toLine = (row: readonly string[]): string =>
    head
      .map((_, column) => cell(row, column))
      .join('  ')
      .trimEnd();
  return [toLine(head), widths.map((width) => '-'.repeat(width)).join('  '), ...rows.map(toLine)];
}

function lengthOf(text: string): number {
  return [...text].length;
}
