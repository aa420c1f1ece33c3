/**
 * When which hands do what. One pair of hands works, leather waits by itself; while some waits, the hands go on with
 * other leather. All times are whole minutes from the midnight before the start.
 */

/** One thing to do, with what must be over before it. */
export interface Task {
  readonly id: string;
  /** Tasks of one lot are best done in a row. */
  readonly lot: string;
  /** Which leather is in the hands; absent where it is none in particular. */
  readonly block?: string;
  readonly handsMin: number;
  /** How long the leather lies after it. */
  readonly waitMin: number;
  /** Ids of tasks that must be done, and their waiting over. */
  readonly after: readonly string[];
}

export interface TimedTask extends Task {
  readonly startMin: number;
  readonly endMin: number;
  /** When the leather is ready for what comes next. */
  readonly readyMin: number;
}

export interface WorkingHours {
  readonly fromMin: number;
  readonly toMin: number;
}

export interface TimetableOptions {
  readonly startMin?: number;
  /** Hands work only then, each day; leather waits over night too. Absent: at any time. */
  readonly hours?: WorkingHours;
}

export interface Timetable {
  /** In the order in which they begin. */
  readonly tasks: readonly TimedTask[];
  /** When the last of all is done and has waited. */
  readonly endMin: number;
  readonly handsMin: number;
}

const DAY_MIN = 24 * 60;

/**
 * A timetable by list scheduling: whenever the hands are free they take, of what is ready, the task that the longest
 * chain of work and waiting still hangs on; of equal ones, the next of the lot that was begun, then the first given.
 * A task that would not be over before the working hours end waits for the next morning.
 * Throws `RangeError` where tasks wait for one another in a circle, or one is longer than a working day.
 */
export function timetableOf(tasks: readonly Task[], options: TimetableOptions = {}): Timetable {
  const { hours } = options;
  refuseTooLong(tasks, hours);
  const chains = chainOfLots(tasks);
  const done = new Map<string, TimedTask>();
  let open = [...tasks];
  let now = options.startMin ?? 0;
  let lot: string | undefined;
  while (open.length > 0) {
    const timed = open.flatMap((task) => {
      const ready = readyAt(task, done);
      return ready === undefined ? [] : [{ task, startMin: handsFrom(Math.max(now, ready), task, hours) }];
    });
    if (timed.length === 0) throw new RangeError('Tasks wait for one another in a circle.');
    const soonest = Math.min(...timed.map(({ startMin }) => startMin));
    const ready = timed.filter(({ startMin }) => startMin === soonest);
    const next = ready.reduce((best, each) => (goesFirst(each.task, best.task, chains, lot) ? each : best));
    const endMin = next.startMin + next.task.handsMin;
    done.set(next.task.id, {
      ...next.task,
      startMin: next.startMin,
      endMin,
      readyMin: endMin + next.task.waitMin,
    });
    open = open.filter((task) => task !== next.task);
    now = endMin;
    lot = next.task.lot;
  }
  const all = [...done.values()];
  return {
    tasks: all,
    endMin: Math.max(options.startMin ?? 0, ...all.map(({ readyMin }) => readyMin)),
    handsMin: all.reduce((sum, { handsMin }) => sum + handsMin, 0),
  };
}

function refuseTooLong(tasks: readonly Task[], hours: WorkingHours | undefined): void {
  if (hours === undefined) return;
  const long = tasks.find(({ handsMin }) => handsMin > hours.toMin - hours.fromMin);
  if (long !== undefined) throw new RangeError(`The task "${long.id}" is longer than a working day.`);
}

/** When all that comes before it has waited; undefined while some of that is not done yet. */
function readyAt(task: Task, done: ReadonlyMap<string, TimedTask>): number | undefined {
  let ready = 0;
  for (const id of task.after) {
    const before = done.get(id);
    if (before === undefined) return undefined;
    ready = Math.max(ready, before.readyMin);
  }
  return ready;
}

/** The first minute from then on at which hands can begin it and end it the same day. */
function handsFrom(from: number, { handsMin }: Task, hours: WorkingHours | undefined): number {
  if (hours === undefined) return from;
  const day = Math.floor(from / DAY_MIN) * DAY_MIN;
  const start = Math.max(from, day + hours.fromMin);
  return start + handsMin <= day + hours.toMin ? start : day + DAY_MIN + hours.fromMin;
}

function goesFirst(
  task: Task,
  than: Task,
  chains: ReadonlyMap<string, number>,
  lot: string | undefined,
): boolean {
  if (task.lot === than.lot) return false;
  if (than.lot === lot) return false;
  if (task.lot === lot) return true;
  return chains.get(task.lot)! > chains.get(than.lot)!;
}

/** The longest chain of hands and waiting from each lot to the end, in minutes. */
function chainOfLots(tasks: readonly Task[]): ReadonlyMap<string, number> {
  const followers = new Map<string, Task[]>();
  for (const task of tasks) {
    for (const id of task.after) followers.set(id, [...(followers.get(id) ?? []), task]);
  }
  const known = new Map<string, number>();
  const chain = (task: Task): number => {
    const found = known.get(task.id);
    if (found !== undefined) return found;
    // A circle is refused later; here it only must not run for ever.
    known.set(task.id, 0);
    const rest = Math.max(0, ...(followers.get(task.id) ?? []).map(chain));
    known.set(task.id, task.handsMin + task.waitMin + rest);
    return known.get(task.id)!;
  };
  const lots = new Map<string, number>();
  for (const task of tasks) lots.set(task.lot, Math.max(lots.get(task.lot) ?? 0, chain(task)));
  return lots;
}
