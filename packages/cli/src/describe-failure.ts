import type { GeometryErrorCode } from '@hidebound/geometry';
import { placeWords, sentenceFor } from '@hidebound/leather';
import type { DiagnosticPlace, SentenceParams } from '@hidebound/leather';
import { CliError } from './cli-error.js';
import { SENTENCE_TABLES } from './cli-sentences.js';
import { EXIT_STATUS } from './exit-status.js';
import type { ExitStatus } from './exit-status.js';

/** A failure as it is told: one sentence with its place in front, a stable code, an exit status. */
export interface Failure {
  readonly exitStatus: ExitStatus;
  readonly code: string;
  readonly sentence: string;
  readonly place?: DiagnosticPlace;
}

/** The packages' own errors: each says that the input is bad, with a stable code. */
const INPUT_ERRORS = new Set(['LeatherError', 'IntakeError', 'GeometryError', 'RenderError']);

/** The one code of theirs for which the input is not to blame. */
const WORKER_FAILED: GeometryErrorCode = 'worker-failed';

/**
 * Turns whatever was thrown into what is told. Only a mistake in the program itself has no sentence of its own. Bad
 * input of unknown place is in the main file.
 */
export function describeFailure(error: unknown, mainFile?: string): Failure {
  if (error instanceof CliError) {
    const isInput = error.exitStatus === EXIT_STATUS.badInput;
    return tell(
      error.exitStatus,
      error.code,
      error.message,
      error.place ?? (isInput ? placeIn(mainFile) : undefined),
    );
  }
  if (error instanceof Error && INPUT_ERRORS.has(error.name) && codeOf(error) !== WORKER_FAILED) {
    const place = placeOf(error);
    return tell(EXIT_STATUS.badInput, codeOf(error), bareMessage(error, place), place ?? placeIn(mainFile));
  }
  const words = error instanceof Error ? error.message : String(error);
  return {
    exitStatus: EXIT_STATUS.internal,
    code: 'internal',
    sentence: `this should not have happened (${oneLine(words)}); run it again with --debug and report what it says.`,
  };
}

function placeIn(file: string | undefined): DiagnosticPlace | undefined {
  return file === undefined ? undefined : { file };
}

function tell(
  exitStatus: ExitStatus,
  code: string,
  message: string,
  place: DiagnosticPlace | undefined,
): Failure {
  const sentence = [placePrefix(place), oneLine(message)].filter((part) => part !== '').join(': ');
  return { exitStatus, code, sentence, ...(place === undefined ? {} : { place }) };
}

/** "FILE:LINE, what": the form that editors and terminals make a link of. */
export function placePrefix(place: DiagnosticPlace | undefined): string {
  if (place === undefined) return '';
  const head = [place.file, place.line].filter((part) => part !== undefined).join(':');
  const point = place.point === undefined ? [] : [`(${tenths(place.point.x)}, ${tenths(place.point.y)}) mm`];
  const rest = [...(place.at === undefined || place.at === '' ? [] : [place.at]), ...point];
  return [...(head === '' ? [] : [head]), ...rest].join(', ');
}

function tenths(value: number): string {
  return String(Math.round(value * 10) / 10);
}

/** The sentence without the place that the error's own message has in front of it. */
function bareMessage(error: Error, place: DiagnosticPlace | undefined): string {
  const prefix = `${placeWords(place)}: `;
  if (error.message.startsWith(prefix)) return error.message.slice(prefix.length);
  if (!('params' in error) || typeof error.params !== 'object' || error.params === null) return error.message;
  const params = error.params as SentenceParams;
  const bare = sentenceFor({ code: codeOf(error), params }, SENTENCE_TABLES);
  return error.message.endsWith(bare) ? bare : error.message;
}

function codeOf(error: Error): string {
  return 'code' in error && typeof error.code === 'string' ? error.code : 'bad-input';
}

function placeOf(error: Error): DiagnosticPlace | undefined {
  if (!('place' in error) || typeof error.place !== 'object' || error.place === null) return undefined;
  return error.place;
}

function oneLine(text: string): string {
  return text.replace(/\s+/g, ' ').trim();
}

/** Where it came from; for what went wrong in another thread, where that was. */
export function stackWords({ stack = '', cause }: Error): string {
  return typeof cause === 'string' ? `${stack}\n${cause}\n` : `${stack}\n`;
}
