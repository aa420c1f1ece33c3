/** A file's content within JSON: text as it is, where it comes back as the same bytes, else as base64. */
export async function contentToSend(bytes: Uint8Array): Promise<{ text: string } | { base64: string }> {
  const text = textOf(bytes);
  return text === undefined ? { base64: await base64Of(bytes) } : { text };
}

/** `ignoreBOM` keeps a mark at the start as a character, so that it is written again. */
function textOf(bytes: Uint8Array): string | undefined {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    return undefined;
  }
}

/** By the browser itself, beside the page's own thread: a photo would hold up the hand that is drawing. */
function base64Of(bytes: Uint8Array): Promise<string> {
  return new Promise((resolve, reject) => {
    const reader = new FileReader();
    reader.onload = () => {
      const address = reader.result as string;
      resolve(address.slice(address.indexOf(',') + 1));
    };
    reader.onerror = () => reject(reader.error ?? new Error('A file could not be made ready for sending.'));
    reader.readAsDataURL(new Blob([bytes as Uint8Array<ArrayBuffer>]));
  });
}
