import * as v from 'valibot';
import { LeatherError } from '../../leather-error.js';
import type { LeatherErrorCode } from '../../leather-error.js';
import type { SENTENCES, SentenceCode } from '../../words/catalogue.js';
import { leatherError } from '../../words/refuse.js';
import type { ParamsOf, SentenceParams } from '../../words/sentence.js';

/** A finding with its bare sentence, carried as the message of a schema's issue until its place is known. */
export interface Problem {
  readonly code: LeatherErrorCode;
  readonly sentence: string;
  readonly said: string;
  readonly params: SentenceParams;
}

/** Marks a message that holds a problem; other messages are the words for what would be right. */
const MARK = '\u0001';

/** The message for a schema's check whose failure has a sentence of its own. */
export function problemMessage<Code extends SentenceCode>(
  code: Code,
  params: ParamsOf<typeof SENTENCES, Code>,
): string {
  return messageOf(leatherError(code, params));
}

function messageOf(error: LeatherError): string {
  const { code, message: sentence, said, params } = error;
  return `${MARK}${JSON.stringify({ code, sentence, said, params } satisfies Problem)}`;
}

/** The problem within a message, if it holds one. */
export function problemOf(message: string): Problem | undefined {
  if (!message.startsWith(MARK)) return undefined;
  return JSON.parse(message.slice(MARK.length)) as Problem;
}

/** A transformation by a function that throws a LeatherError, without place, for what it can't read. */
export function readWith<Input, Output>(read: (input: Input) => Output) {
  return v.rawTransform<Input, Output>(({ dataset, addIssue, NEVER }) => {
    try {
      return read(dataset.value);
    } catch (error) {
      if (!(error instanceof LeatherError)) throw error;
      addIssue({ message: messageOf(error) });
      return NEVER;
    }
  });
}
