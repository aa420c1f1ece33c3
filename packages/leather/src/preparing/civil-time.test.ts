import { expect, test } from 'vitest';
import { civilTimeAfter, formatCivilTime, parseCivilTime } from './civil-time.js';

const DAY = 24 * 60;

function after(text: string, minutes: number): string {
  return formatCivilTime(civilTimeAfter(parseCivilTime(text)!, minutes));
}

// Calendar facts: 2026-03-02 is a Monday; 2024 has a 29 February, 2026 has none (Gregorian rule).
test('when days pass, month, year and weekday follow the calendar', () => {
  expect(after('2026-03-02 08:00', 8 * 60)).toBe('Mon 2026-03-02 8:00');
  expect(after('2026-03-02', 3 * DAY + 65)).toBe('Thu 2026-03-05 1:05');
  expect(after('2024-02-28', DAY)).toBe('Thu 2024-02-29 0:00');
  expect(after('2026-02-28', DAY)).toBe('Sun 2026-03-01 0:00');
  expect(after('2026-12-31', DAY)).toBe('Fri 2027-01-01 0:00');
});

test.each(['2026-02-30', '2026-13-01', '2026-03-02 25:00', '2026-03-02 08:60', 'tomorrow', '2-3-2026'])(
  'when the text is %s, it is no moment',
  (text) => {
    expect(parseCivilTime(text)).toBeUndefined();
  },
);
