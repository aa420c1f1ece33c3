import type { Page } from 'playwright-core';

/** What went on in a page beside what a person sees. */
export interface PageFaults {
  /** Errors that nobody caught, and what the console calls an error, what the content policy refused among it. */
  readonly errors: string[];
  /** Addresses outside of the page's own origin that were asked for. */
  readonly strangers: string[];
  readonly dialogs: string[];
}

/** Gathers faults from now on; `origin` is where the page may load from. Call it before the page is opened. */
export function watchPage(page: Page, origin: string): PageFaults {
  const faults: PageFaults = { errors: [], strangers: [], dialogs: [] };
  page.on('pageerror', (error) => faults.errors.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') faults.errors.push(`${message.text()} ${message.location().url}`);
  });
  page.on('dialog', (dialog) => {
    faults.dialogs.push(dialog.message());
    dialog.dismiss().catch(() => undefined);
  });
  page.on('request', (request) => {
    const url = request.url();
    if (!url.startsWith(origin) && !/^(blob|data):/.test(url)) faults.strangers.push(url);
  });
  return faults;
}

/** A file to be made in the page; `sizeBytes` for one of blanks, which need not be sent to it. */
export type DroppedFile = { readonly name: string } & (
  { readonly text: string } | { readonly bytes: readonly number[] } | { readonly sizeBytes: number }
);

/** Lets go of files over the drawing, as from another window. */
export async function dropFiles(page: Page, files: readonly DroppedFile[]): Promise<void> {
  await page.evaluate((given) => {
    const dataTransfer = new DataTransfer();
    for (const file of given) {
      const content =
        'text' in file
          ? file.text
          : 'bytes' in file
            ? new Uint8Array(file.bytes)
            : new Uint8Array(file.sizeBytes).fill(32);
      dataTransfer.items.add(new File([content], file.name));
    }
    const drawing = document.querySelector('.stage')!;
    for (const kind of ['dragover', 'drop'])
      drawing.dispatchEvent(new DragEvent(kind, { dataTransfer, bubbles: true, cancelable: true }));
  }, files);
}
