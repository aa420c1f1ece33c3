/** Has the person choose files; empty where she chooses none. */
export function chooseFiles(accept: string, options: { readonly several?: boolean } = {}): Promise<File[]> {
  return new Promise((resolve) => {
    const input = document.createElement('input');
    input.type = 'file';
    input.accept = accept;
    input.multiple = options.several === true;
    input.className = 'for-listeners';
    const end = (files: File[]): void => {
      input.remove();
      resolve(files);
    };
    input.addEventListener('change', () => end([...(input.files ?? [])]));
    input.addEventListener('cancel', () => end([]));
    document.body.append(input);
    input.click();
  });
}

export async function bytesOfFile(file: File): Promise<Uint8Array> {
  return new Uint8Array(await file.arrayBuffer());
}
