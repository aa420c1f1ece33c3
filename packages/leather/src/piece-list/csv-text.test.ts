import { expect, test } from 'vitest';
import { csvText } from './csv-text.js';

/** What stands in the file after the byte order mark and the head. */
function lineOf(...cells: readonly (string | number | boolean | undefined)[]): string {
  const text = csvText(
    cells.map((_, i) => `c${i}`),
    [cells],
  );
  expect(text.startsWith('\ufeff')).toBe(true);
  return text.slice(1).split('\r\n').slice(1).join('\r\n');
}

// Expected texts follow RFC 4180, section 2, by hand.
test('when cells hold commas, quotes or line breaks, they are quoted and quotes are doubled', () => {
  expect(lineOf('a,b', 'say "ah"', 'two\nlines', 'plain')).toBe('"a,b","say ""ah""","two\nlines",plain\r\n');
});

test('when a table is written, every line ends in CR LF, the last one too', () => {
  expect(
    csvText(
      ['n', 'name'],
      [
        [1, 'x'],
        [2, undefined],
      ],
    ),
  ).toBe('\ufeffn,name\r\n1,x\r\n2,\r\n');
});

// OWASP, "CSV Injection": cells must not begin with any of these.
test.each(['=1+1', '+1', '-1', '@SUM(A1)', '\tx', '\rx', '\nx', '  =1', '＝1', '＠x'])(
  'when a text begins like the formula %j, an apostrophe makes it a text',
  (text) => {
    expect(lineOf(text).replace(/^"/, '').startsWith("'")).toBe(true);
  },
);

test('when a formula needs quotes as well, the apostrophe stands within them', () => {
  expect(lineOf('=HYPERLINK("http://example.org","x")')).toBe(
    `"'=HYPERLINK(""http://example.org"",""x"")"\r\n`,
  );
});

test('when a number is below zero, it stays a number', () => {
  expect(lineOf(-12.5, 0, true)).toBe('-12.5,0,true\r\n');
});

test.each(['Gürtel', 'ζώνη', 'ремень'])('when a name is %s, it stands as it is', (name) => {
  expect(lineOf(name)).toBe(`${name}\r\n`);
});
