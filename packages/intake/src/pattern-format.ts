import type { PatternFormat } from './pattern-read.js';

/** A PDF may have some bytes before its header (ISO 32000-1, annex H, implementation note 13: within the first 1,024). */
const PDF_HEADER_WITHIN = 1024;

/** Enough to see the first pairs of a DXF, comments before them included. */
const DXF_HEAD = 4096;

/**
 * What a file is, by its first bytes. A DXF in text starts with group code 0 and SECTION, after comments (group code
 * 999); one in binary says so on its first line. What is neither is left to the SVG reader, whose refusals say what
 * else it may be.
 */
export function patternFormatOf(bytes: Uint8Array): PatternFormat {
  const head = latin(bytes.subarray(0, DXF_HEAD));
  if (head.slice(0, PDF_HEADER_WITHIN).includes('%PDF-')) return 'PDF';
  const text = head.replace(/^\u00ef\u00bb\u00bf/, '');
  if (isBinaryDxf(head)) return 'DXF';
  return isDwg(head) || DXF_START.test(text) ? 'DXF' : 'SVG';
}

/** Lines end with LF, CR LF or CR. */
const DXF_START =
  /^\s*(?:999[ \t]*(?:\r\n?|\n)[^\r\n]*(?:\r\n?|\n)\s*)*0[ \t]*(?:\r\n?|\n)[ \t]*SECTION[ \t]*(?:\r\n?|\n)/;

/** A DWG file starts with its version. It is no DXF, but the reader of DXF has the advice. */
export function isDwg(head: string): boolean {
  return /^AC(?:1\.|2\.|10)\d\d/.test(head);
}

/** The first line of a binary DXF: its sentinel ends with these words, a line end, a substitute character and a zero. */
export function isBinaryDxf(head: string): boolean {
  return /^[\w ]{0,20}Binary DXF\r\n\u001a\0/.test(head);
}

function latin(bytes: Uint8Array): string {
  return String.fromCharCode(...bytes);
}
