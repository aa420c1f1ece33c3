import { GeometryError } from '../error.js';
import type { Stream } from '../types/stream.js';
import { streamsOfJoin } from './joins.js';
import { failedMessage, isToWorker } from './messages.js';
import type { OutcomeMessage, ProgressMessage, StartMessage, WorkMessage } from './messages.js';
import type { OwnerPort } from './worker-port.js';
import type { StreamFactory } from '../types/stream.js';

export interface ServeOptions {
  /** Called after each unit of work. For tests of sameness, which put delays in. */
  readonly pause?: (at: UnitOfWork) => void;
}

export interface UnitOfWork {
  readonly stream: number;
  readonly join: number;
  /** From 1, within the join. */
  readonly unit: number;
}

/** More often costs messages; more seldom, and a caller that asks "should I stop?" is asked too late. */
const UNITS_BETWEEN_REPORTS = 4;

/** The streams that live in this worker. */
interface OwnStreams {
  readonly start: StartMessage;
  readonly made: Map<number, Stream>;
}

/** The worker's side: makes the streams that it is told to, and works on them join by join. */
export function serveStreams(
  owner: OwnerPort,
  createStream: StreamFactory,
  options: ServeOptions = {},
): void {
  let own: OwnStreams | undefined;
  owner.onMessage((message) => {
    try {
      if (!isToWorker(message)) throw unreadable();
      if (message.kind === 'start') own = prepareStreams(message, createStream);
      else if (own === undefined) throw unreadable();
      else workUpTo(message, own, { owner, createStream, ...options });
    } catch (error) {
      owner.post(failedMessage(error));
    }
  });
}

function unreadable(): GeometryError {
  return new GeometryError('worker-failed', 'A worker of the search got a message that it can not read.');
}

/** Beside the first layout, which nothing may delay, the streams are got ready while it is being made. */
function prepareStreams(start: StartMessage, createStream: StreamFactory): OwnStreams {
  const isFirst = start.streams.includes(0);
  const early = isFirst ? [0] : start.streams;
  const made = new Map(early.map((stream) => [stream, createStream(start.problem, stream)]));
  if (!isFirst) for (const stream of made.values()) stream.prepare?.();
  return { start, made };
}

interface Service extends ServeOptions {
  readonly owner: OwnerPort;
  readonly createStream: StreamFactory;
}

function workUpTo(work: WorkMessage, own: OwnStreams, service: Service): void {
  const { start } = own;
  const atWork = work.join === 0 ? streamsOfJoin(0, 1) : start.streams;
  for (const stream of atWork) {
    if (!workOn(stream, work, own, service)) return;
  }
}

/** True once the stream has reached the join, false if it was stopped on its way. */
function workOn(stream: number, { join, best }: WorkMessage, own: OwnStreams, service: Service): boolean {
  const { start, made } = own;
  const { owner, createStream, pause } = service;
  const one = made.get(stream) ?? createStream(start.problem, stream);
  made.set(stream, one);
  one.begin(join, best);
  for (let unit = 1; ; unit++) {
    // The first layout is always finished, so that there is an answer.
    if (join > 0 && isStopped(start.stopFlag)) return false;
    const isThere = one.advance();
    pause?.({ stream, join, unit });
    if (isThere) break;
    if (unit % UNITS_BETWEEN_REPORTS !== 0) continue;
    owner.post({ kind: 'progress', stream, join, progress: one.progress() } satisfies ProgressMessage);
  }
  owner.post({ kind: 'outcome', stream, join, outcome: one.outcome() } satisfies OutcomeMessage);
  return true;
}

function isStopped(flag: Int32Array | undefined): boolean {
  return flag !== undefined && Atomics.load(flag, 0) !== 0;
}
