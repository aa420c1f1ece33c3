import { isPlainObject } from './plain-object.js';
import { TableRefusal } from './refusal.js';
import type { SaveWrite } from './save-files.js';

const REVISION = /^[0-9a-f]{64}$/;

/**
 * What a request asks to be saved: `{"writes": [{"path", "base", "text"} | {"path", "base", "base64"} |
 * {"path", "base", "remove": true}]}`. Fails with a TableRefusal 400 that names the write.
 */
export function parseSave(body: Uint8Array): readonly SaveWrite[] {
  const value = parseJson(body);
  const writes: unknown = isPlainObject(value) ? value['writes'] : undefined;
  if (!Array.isArray(writes)) throw bad('A save is {"writes": […]}.');
  return writes.map((write: unknown, i) => parseWrite(write, `writes[${i}]`));
}

function parseJson(body: Uint8Array): unknown {
  try {
    return JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(body));
  } catch {
    throw bad('This is not JSON in UTF-8.');
  }
}

function parseWrite(write: unknown, at: string): SaveWrite {
  if (!isPlainObject(write)) throw bad(`${at} must be an object.`);
  const { path, base, text, base64, remove, ...rest } = write;
  const [unknown] = Object.keys(rest);
  if (unknown !== undefined) throw bad(`${at} has an unknown key, ${JSON.stringify(unknown.slice(0, 40))}.`);
  if (typeof path !== 'string' || path === '') throw bad(`${at}.path must be a path.`);
  if (base !== null && !(typeof base === 'string' && REVISION.test(base))) {
    throw bad(`${at}.base must be the revision that was changed, or null for a new file.`);
  }
  if ([text, base64, remove].filter((each) => each !== undefined).length !== 1) {
    throw bad(`${at} must have one of text, base64 and remove.`);
  }
  if (remove !== undefined) {
    if (remove !== true) throw bad(`${at}.remove can only be true.`);
    return { path, base };
  }
  return { path, base, bytes: base64 === undefined ? textBytes(text, at) : base64Bytes(base64, at) };
}

function textBytes(text: unknown, at: string): Uint8Array {
  if (typeof text !== 'string') throw bad(`${at}.text must be a text.`);
  const bytes = Buffer.from(text, 'utf8');
  // Half a letter would become another one.
  if (/\p{Cs}/u.test(text)) throw bad(`${at}.text holds half a letter; send it as base64.`);
  return bytes;
}

function base64Bytes(base64: unknown, at: string): Uint8Array {
  const words = `${at}.base64 must be base64 with its padding.`;
  if (typeof base64 !== 'string' || base64.length % 4 !== 0) throw bad(words);
  const padding = base64.endsWith('==') ? 2 : base64.endsWith('=') ? 1 : 0;
  const bytes = Buffer.from(base64, 'base64');
  // Letters that are not of base64 are passed over, so there would be less.
  if (bytes.length !== (base64.length / 4) * 3 - padding) throw bad(words);
  return bytes;
}

function bad(sentence: string): TableRefusal {
  return new TableRefusal(400, 'bad-request', sentence);
}
