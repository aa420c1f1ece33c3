import type { Pairs } from './pairs.js';

/** A decoder as every engine has it; the core packages know neither Node's nor the browser's types. */
interface Decoder {
  decode(bytes: Uint8Array): string;
}
type DecoderConstructor = new (label: string, options: { fatal: boolean }) => Decoder;

/** Turns the bytes of a value into characters. */
export type Decode = (bytes: Uint8Array) => string;

/** Code pages of $DWGCODEPAGE that the Encoding Standard calls otherwise than `windows-` and their number. */
const OTHER_PAGES: Readonly<Record<string, string>> = {
  '932': 'shift_jis',
  '936': 'gbk',
  '949': 'euc-kr',
  '950': 'big5',
};

/** From this version on all text is UTF-8 (DXF reference of release 2007). */
const FIRST_UTF8 = 'AC1021';

/**
 * How text is written: UTF-8 from release 2007 on, before it in the code page that the header names. A file that names
 * none is taken for UTF-8 where its bytes are valid as such, else for Windows-1252.
 */
export function textDecoder(version: string | undefined, codePage: string | undefined): Decode {
  if (version !== undefined && version >= FIRST_UTF8) return decoderOf('utf-8')!;
  const number = /(\d+)\s*$/.exec(codePage ?? '')?.[1];
  const named = number === undefined ? undefined : decoderOf(OTHER_PAGES[number] ?? `windows-${number}`);
  return named ?? utf8OrLatin(decoderOf('utf-8', true)!, decoderOf('windows-1252')!);
}

function decoderOf(label: string, fatal = false): Decode | undefined {
  const { TextDecoder } = globalThis as unknown as { TextDecoder: DecoderConstructor };
  try {
    const decoder = new TextDecoder(label, { fatal });
    return (bytes) => decoder.decode(bytes);
  } catch {
    return undefined;
  }
}

function utf8OrLatin(utf8: Decode, latin: Decode): Decode {
  return (bytes) => {
    try {
      return utf8(bytes);
    } catch {
      return latin(bytes);
    }
  };
}

/** The text of a value, with the format's own escape for characters that its code page lacks: `\U+00E9`. */
export function textAt({ bytes, starts, ends }: Pairs, pair: number, decode: Decode): string {
  const start = starts[pair]!;
  const end = ends[pair]!;
  let text = '';
  for (let i = start; i < end; i++) {
    if (bytes[i]! > 0x7e) return unescaped(decode(bytes.subarray(start, end)));
    text += String.fromCharCode(bytes[i]!);
  }
  return unescaped(text);
}

function unescaped(text: string): string {
  return text.includes('\\U+')
    ? text.replace(/\\U\+([0-9a-fA-F]{4})/g, (_, hex: string) => String.fromCharCode(parseInt(hex, 16)))
    : text;
}

/** Codes within TEXT and ATTRIB (DXF reference, "Control codes"): signs, characters by number, lines over and under. */
const SIGNS: Readonly<Record<string, string>> = { d: '°', p: '±', c: '⌀', '%': '%', u: '', o: '', k: '' };

/** A line of text as one reads it. */
export function plainText(text: string): string {
  const plain = text
    .replace(/%%(\d{3})/g, (_, code: string) => String.fromCharCode(Number(code)))
    .replace(/%%([dpcuok%])/gi, (_, letter: string) => SIGNS[letter.toLowerCase()]!);
  return plain.replace(/\s+/g, ' ').trim();
}

/**
 * A paragraph as one reads it, without the codes of its looks (DXF reference, MTEXT): `\P` and `^J` break the line,
 * `\~` is a space, `\S1/2;` a fraction, `\f…;` and other letters with a semicolon change fonts, sizes and colours, `{}` group.
 */
export function plainParagraph(text: string): string {
  const plain = text
    .replace(/\\([\\{}])/g, (_, sign: string) => String.fromCharCode(0xe000 + sign.charCodeAt(0)))
    .replace(/\\S([^;]*);/g, (_, stacked: string) => stacked.replace(/[\^#]\s?/, '/'))
    .replace(/\\[ACcFfHQTWp][^;\\]*;/g, '')
    .replace(/\\[LlOoKk]/g, '')
    .replace(/\\[PXN]|\^[JMI]/g, ' ')
    .replace(/\\~/g, ' ')
    .replace(/[{}]/g, '')
    .replace(/[\ue000-\ue0ff]/g, (sign) => String.fromCharCode(sign.charCodeAt(0) - 0xe000));
  return plainText(plain);
}
