import { deflateSync } from 'node:zlib';

/** A page as a test wants it: operators, and entries of its dictionary beyond the media box. */
export interface WrittenPage {
  readonly content: string | Uint8Array;
  /** Corners of the media box, points; 200 by 300 from 0 by default. */
  readonly mediaBox?: readonly number[];
  /** More of the page's dictionary, such as "/Rotate 90 /CropBox [10 10 90 90]". */
  readonly entries?: string;
  /** Inside of the page's resources. */
  readonly resources?: string;
}

/** Another object of the file, from number 1000 on in the order of the list: a dictionary's inside, with or without a stream. */
export interface WrittenObject {
  readonly dictionary: string;
  readonly stream?: string | Uint8Array;
  /** The object's text as it stands, instead of a dictionary: an array, a number. */
  readonly bare?: string;
}

export interface WrittenFile {
  readonly pages: readonly WrittenPage[];
  readonly objects?: readonly WrittenObject[];
  /** More of the catalog's dictionary. */
  readonly catalog?: string;
  /** More of the root of the page tree, which pages inherit. */
  readonly pagesEntries?: string;
  /** More of the trailer's dictionary. */
  readonly trailer?: string;
  /** Pack the pages' operators. */
  readonly isDeflated?: boolean;
}

/** Number of the first of `objects`. */
export const FIRST_OBJECT = 1000;
const CATALOG = 1;
const PAGES = 2;
const FIRST_PAGE = 10;

/**
 * A small PDF, object by object, with its table (ISO 32000-1, section 7.5): for tests that need a page to say exactly
 * what they mean. One font is there for every page: /F1, Helvetica.
 */
export function writePdf(file: WrittenFile): Uint8Array {
  const objects = new Map<number, Uint8Array>();
  const kids = file.pages.map((_, i) => `${FIRST_PAGE + 2 * i} 0 R`).join(' ');
  objects.set(CATALOG, latin(`<< /Type /Catalog /Pages ${PAGES} 0 R ${file.catalog ?? ''} >>`));
  const count = file.pages.length;
  objects.set(PAGES, latin(`<< /Type /Pages /Kids [${kids}] /Count ${count} ${file.pagesEntries ?? ''} >>`));
  objects.set(3, latin('<< /Type /Font /Subtype /Type1 /BaseFont /Helvetica /Encoding /WinAnsiEncoding >>'));
  file.pages.forEach((page, i) => {
    const number = FIRST_PAGE + 2 * i;
    const box = (page.mediaBox ?? [0, 0, 200, 300]).join(' ');
    const resources = page.entries?.includes('/NoResources')
      ? ''
      : `/Resources << /Font << /F1 3 0 R >> ${page.resources ?? ''} >>`;
    objects.set(
      number,
      latin(
        `<< /Type /Page /Parent ${PAGES} 0 R /MediaBox [${box}] /Contents ${number + 1} 0 R ${resources} ${page.entries ?? ''} >>`,
      ),
    );
    const content = typeof page.content === 'string' ? latin(page.content) : page.content;
    objects.set(
      number + 1,
      file.isDeflated === true
        ? streamObject('/Filter /FlateDecode', deflateSync(content))
        : streamObject('', content),
    );
  });
  file.objects?.forEach(({ dictionary, stream, bare }, i) => {
    const bytes = typeof stream === 'string' ? latin(stream) : stream;
    objects.set(
      FIRST_OBJECT + i,
      bytes === undefined ? latin(bare ?? `<< ${dictionary} >>`) : streamObject(dictionary, bytes),
    );
  });
  return assemble(objects, file.trailer ?? '');
}

/** Bytes of a text whose letters are bytes. */
export function latin(text: string): Uint8Array {
  return Buffer.from(text, 'latin1');
}

function streamObject(dictionary: string, bytes: Uint8Array): Uint8Array {
  const head = latin(`<< ${dictionary} /Length ${bytes.length} >>\nstream\n`);
  return Buffer.concat([head, bytes, latin('\nendstream')]);
}

function assemble(objects: ReadonlyMap<number, Uint8Array>, trailer: string): Uint8Array {
  const parts: Uint8Array[] = [latin('%PDF-1.7\n%\u00e2\u00e3\u00cf\u00d3\n')];
  let size = parts[0]!.length;
  const push = (bytes: Uint8Array) => {
    parts.push(bytes);
    size += bytes.length;
  };
  const places: string[] = [];
  for (const [number, body] of [...objects].sort(([a], [b]) => a - b)) {
    places.push(`${number} 1\n${String(size).padStart(10, '0')} 00000 n \n`);
    push(latin(`${number} 0 obj\n`));
    push(body);
    push(latin('\nendobj\n'));
  }
  const table = size;
  const most = Math.max(...objects.keys()) + 1;
  push(
    latin(
      `xref\n0 1\n0000000000 65535 f \n${places.join('')}trailer\n<< /Size ${most} /Root ${CATALOG} 0 R ${trailer} >>\nstartxref\n${table}\n%%EOF\n`,
    ),
  );
  return Buffer.concat(parts);
}
