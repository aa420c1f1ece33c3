/** Escapes markup and drops the control characters that XML can't hold. */
export function escapeXml(text: string): string {
  return text
    .replace(UNSPEAKABLE, '')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;');
}

const UNSPEAKABLE = /[^\t\n\r\u0020-\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]/gu;
