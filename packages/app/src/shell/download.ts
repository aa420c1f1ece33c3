/** The address of a file that was saved is kept for this long: some browsers read it only later. */
const KEPT_MS = 60_000;

/** Hands a file to the person, under a name that every disk takes. */
export function download(name: string, bytes: Uint8Array, type: string): void {
  const url = URL.createObjectURL(new Blob([bytes as Uint8Array<ArrayBuffer>], { type }));
  const link = document.createElement('a');
  link.href = url;
  link.download = fileWord(name);
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(url), KEPT_MS);
}

/** Without what disks and shells make something else of. */
export function fileWord(name: string): string {
  const plain = name
    .normalize('NFC')
    .replace(/[\p{Cc}<>:"/\\|?*]+/gu, ' ')
    .replace(/\s+/g, ' ')
    .trim()
    .replace(/^\.+|\.+$/g, '');
  return plain === '' ? 'hidebound' : plain;
}
