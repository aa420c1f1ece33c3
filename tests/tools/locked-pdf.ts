import { createRequire } from 'node:module';

/** How a file is locked: as pdfkit takes it (ISO 32000-1, section 7.6.3). */
export interface Lock {
  readonly userPassword?: string;
  readonly ownerPassword?: string;
  readonly permissions?: Readonly<Record<string, boolean | string>>;
  readonly pdfVersion?: string;
}

interface Drawing {
  on(event: string, listener: (bytes: Uint8Array) => void): void;
  rect(x: number, y: number, width: number, height: number): Drawing;
  stroke(): Drawing;
  end(): void;
}

const renderRequire = createRequire(new URL('../../packages/render/package.json', import.meta.url));

/** A page with a rectangle of 100 by 60 points, written and locked by pdfkit. */
export function lockedPdf(lock: Lock): Promise<Uint8Array> {
  const PdfKit = renderRequire('pdfkit') as new (options: object) => Drawing;
  return new Promise((done) => {
    const parts: Uint8Array[] = [];
    const document = new PdfKit({ size: [200, 300], margin: 0, ...lock });
    document.on('data', (bytes) => parts.push(bytes));
    document.on('end', () => done(Buffer.concat(parts)));
    document.rect(10, 10, 100, 60).stroke();
    document.end();
  });
}
