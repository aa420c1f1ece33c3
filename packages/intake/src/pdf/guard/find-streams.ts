/** Where a stream lies in the file's bytes, and the text of the dictionary before it. */
export interface FoundStream {
  /** From the last "obj" before it on; names without their escapes. */
  readonly dictionary: string;
  readonly start: number;
  /** Where the next "endstream" stands, or the end of the file. */
  readonly end: number;
}

/** A dictionary longer than this is cut off at its front; those of real streams have some hundred bytes. */
const DICTIONARY_MOST = 1 << 16;

/**
 * Every stream of a PDF, found by its keyword and not by the file's own table, which a hostile file may bend; streams
 * never lie within others (ISO 32000-1, sections 7.3.8 and 7.5.7).
 */
export function findStreams(bytes: Uint8Array): FoundStream[] {
  const found: FoundStream[] = [];
  for (let at = indexOf(bytes, STREAM, 0); at >= 0; at = indexOf(bytes, STREAM, at + STREAM.length)) {
    const after = at + STREAM.length;
    if (endsWord(bytes, at, END) || (bytes[after] !== CR && bytes[after] !== LF)) continue;
    const start = after + (bytes[after] === CR && bytes[after + 1] === LF ? 2 : 1);
    const next = indexOf(bytes, ENDSTREAM, start);
    found.push({ dictionary: dictionaryBefore(bytes, at), start, end: next < 0 ? bytes.length : next });
  }
  return found;
}

const [CR, LF] = [0x0d, 0x0a];
const STREAM = ascii('stream');
const ENDSTREAM = ascii('endstream');
const END = ascii('end');
const OBJ = ascii('obj');

function ascii(text: string): Uint8Array {
  return Uint8Array.from(text, (letter) => letter.charCodeAt(0));
}

/** Where a word stands from a place on, or -1. */
function indexOf(bytes: Uint8Array, word: Uint8Array, from: number): number {
  for (let at = bytes.indexOf(word[0]!, from); at >= 0; at = bytes.indexOf(word[0]!, at + 1)) {
    if (startsWord(bytes, at, word)) return at;
  }
  return -1;
}

function startsWord(bytes: Uint8Array, at: number, word: Uint8Array): boolean {
  for (let i = 1; i < word.length; i++) if (bytes[at + i] !== word[i]) return false;
  return true;
}

function endsWord(bytes: Uint8Array, at: number, word: Uint8Array): boolean {
  const from = at - word.length;
  return from >= 0 && bytes[from] === word[0] && startsWord(bytes, from, word);
}

function dictionaryBefore(bytes: Uint8Array, at: number): string {
  let from = at - OBJ.length;
  const least = Math.max(0, at - DICTIONARY_MOST);
  while (from > least && !(bytes[from] === OBJ[0] && startsWord(bytes, from, OBJ))) from--;
  return withoutEscapes(latin(bytes, from, at));
}

/** Letters of names may be written as #xx (ISO 32000-1, section 7.3.5). */
function withoutEscapes(text: string): string {
  return text.includes('#')
    ? text.replace(/#([0-9A-Fa-f]{2})/g, (_, hex: string) => String.fromCharCode(parseInt(hex, 16)))
    : text;
}

export function latin(bytes: Uint8Array, from: number, to: number): string {
  let text = '';
  for (let i = from; i < to; i += 4096) {
    text += String.fromCharCode(...bytes.subarray(i, Math.min(to, i + 4096)));
  }
  return text;
}

/** True if the file says anywhere that it is encrypted (ISO 32000-1, section 7.6.1). */
export function mentionsEncryption(bytes: Uint8Array): boolean {
  return indexOf(bytes, ascii('/Encrypt'), 0) >= 0;
}

/** The text of the object of that number, its first bytes; nothing if it does not stand in the open. */
export function openObject(bytes: Uint8Array, number: string, generation: string): string | undefined {
  const head = ascii(`${number} ${generation} obj`);
  const at = indexOf(bytes, head, 0);
  return at < 0
    ? undefined
    : latin(bytes, at + head.length, Math.min(bytes.length, at + head.length + 512)).split('endobj')[0];
}

/** How often a word stands among bytes. */
export function countWord(bytes: Uint8Array, word: string): number {
  const letters = ascii(word);
  let count = 0;
  for (let at = indexOf(bytes, letters, 0); at >= 0; at = indexOf(bytes, letters, at + letters.length))
    count++;
  return count;
}
