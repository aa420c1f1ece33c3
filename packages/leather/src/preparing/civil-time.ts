/** A moment on the wall clock, without a zone: a day and the minutes since its midnight. */
export interface CivilTime {
  readonly year: number;
  readonly month: number;
  readonly day: number;
  readonly minutes: number;
}

const DAY_MINUTES = 24 * 60;
const DAY_MS = DAY_MINUTES * 60_000;
const WRITTEN = /^(\d{4})-(\d{2})-(\d{2})(?:[ T](\d{1,2}):(\d{2}))?$/;

/** "2026-03-02 08:00", or the day alone (midnight); undefined for what is no such moment. */
export function parseCivilTime(text: string): CivilTime | undefined {
  const match = WRITTEN.exec(text.trim());
  if (match === null) return undefined;
  const [year, month, day, hour, minute] = match.slice(1).map((part) => Number(part ?? 0)) as [
    number,
    number,
    number,
    number,
    number,
  ];
  const date = new Date(Date.UTC(year, month - 1, day));
  const isReal = date.getUTCMonth() === month - 1 && date.getUTCDate() === day;
  if (!isReal || hour > 23 || minute > 59) return undefined;
  return { year, month, day, minutes: hour * 60 + minute };
}

/** The moment so many minutes after the midnight of a day. Days have 24 hours: clocks that are put forward are not minded. */
export function civilTimeAfter({ year, month, day }: CivilTime, minutes: number): CivilTime {
  const days = Math.floor(minutes / DAY_MINUTES);
  const date = new Date(Date.UTC(year, month - 1, day) + days * DAY_MS);
  return {
    year: date.getUTCFullYear(),
    month: date.getUTCMonth() + 1,
    day: date.getUTCDate(),
    minutes: minutes - days * DAY_MINUTES,
  };
}

const WEEKDAYS = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'] as const;

/** "Mon 2026-03-02 8:00". */
export function formatCivilTime(time: CivilTime): string {
  const { year, month, day, minutes } = time;
  const weekday = WEEKDAYS[new Date(Date.UTC(year, month - 1, day)).getUTCDay()]!;
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${weekday} ${year}-${two(month)}-${two(day)} ${formatClock(minutes)}`;
}

/** Minutes since midnight as "8:05". */
export function formatClock(minutes: number): string {
  return `${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, '0')}`;
}
