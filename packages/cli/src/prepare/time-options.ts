import { parseCivilTime } from '@hidebound/leather';
import type { CivilTime, WorkingHours } from '@hidebound/leather';
import { CliError } from '../cli-error.js';
import type { OptionValues } from '../command-context.js';
import { textOption } from '../command-context.js';

/** When hands work, as `--start` and `--hours` say. */
export interface AskedTimes {
  readonly start?: CivilTime;
  readonly hours?: WorkingHours;
  /** Minutes of the first day. */
  readonly startMin: number;
}

/** A usual working day, where a start is given and no hours are. */
const USUAL_HOURS: WorkingHours = { fromMin: 8 * 60, toMin: 17 * 60 };
const HOURS = /^(\d{1,2})(?::(\d{2}))?\s*[-–]\s*(\d{1,2})(?::(\d{2}))?$/;
const DAY_MIN = 24 * 60;

/** Reads `--start` and `--hours`. Fails with a CliError `bad-use`. */
export function askedTimes(options: OptionValues): AskedTimes {
  const start = startOption(textOption(options, 'start'));
  const hours = hoursOption(textOption(options, 'hours')) ?? (start === undefined ? undefined : USUAL_HOURS);
  return {
    ...(start === undefined ? {} : { start }),
    ...(hours === undefined ? {} : { hours }),
    startMin: start?.minutes ?? hours?.fromMin ?? 0,
  };
}

function startOption(text: string | undefined): CivilTime | undefined {
  if (text === undefined) return undefined;
  const start = parseCivilTime(text);
  if (start !== undefined) return start;
  throw new CliError(
    'bad-use',
    `--start can't be "${text}"; it must be a day and a time, such as "2026-03-02 08:00".`,
  );
}

function hoursOption(text: string | undefined): WorkingHours | undefined {
  if (text === undefined) return undefined;
  const match = HOURS.exec(text.trim());
  const [fromH = NaN, fromM = 0, toH = NaN, toM = 0] = (match?.slice(1) ?? []).map((part) =>
    // A group that is not there is an empty place.
    (part as string | undefined) === undefined ? 0 : Number(part),
  );
  const hours = { fromMin: fromH * 60 + fromM, toMin: toH * 60 + toM };
  const isRight = fromM < 60 && toM < 60 && hours.fromMin < hours.toMin && hours.toMin <= DAY_MIN;
  if (isRight) return hours;
  throw new CliError(
    'bad-use',
    `--hours can't be "${text}"; it must be from and to on one day, such as 8-17 or 8:30-16:30.`,
  );
}
