import { writeArticle, writeHide, writeLayout, writeOrder } from '@hidebound/leather';
import type { JobFile } from '../../job/job.js';

/** A file's content as it is stored. */
export function writeFile(file: JobFile): Uint8Array {
  switch (file.kind) {
    case 'hide':
      return encode(writeHide(file.hide));
    case 'order':
      return encode(writeOrder(file.order));
    case 'article':
      return encode(writeArticle(file.article));
    case 'layout':
      return encode(writeLayout(file.layout));
    case 'text':
      return encode(file.text);
    case 'pattern':
    case 'picture':
    case 'unread':
      return file.bytes;
  }
}

function encode(text: string): Uint8Array {
  return new TextEncoder().encode(text);
}
