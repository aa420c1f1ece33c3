const DIGITS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';

/** Bytes turned to text at a time: long enough to be quick, short enough for one call's arguments. */
const CHUNK_BYTES = 3 * 4096;

/** Bytes as base64 text (RFC 4648, section 4). */
export function toBase64(bytes: Uint8Array): string {
  const chunks: string[] = [];
  for (let from = 0; from < bytes.length; from += CHUNK_BYTES) {
    chunks.push(chunkText(bytes.subarray(from, from + CHUNK_BYTES)));
  }
  return chunks.join('');
}

function chunkText(bytes: Uint8Array): string {
  let text = '';
  for (let i = 0; i < bytes.length; i += 3) {
    const bits = (bytes[i]! << 16) | ((bytes[i + 1] ?? 0) << 8) | (bytes[i + 2] ?? 0);
    text += DIGITS[bits >> 18]! + DIGITS[(bits >> 12) & 63]!;
    text += i + 1 < bytes.length ? DIGITS[(bits >> 6) & 63]! : '=';
    text += i + 2 < bytes.length ? DIGITS[bits & 63]! : '=';
  }
  return text;
}
