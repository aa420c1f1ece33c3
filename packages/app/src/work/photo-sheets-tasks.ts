import type { ReferencePaper } from '@hidebound/leather';

export type PhotoSheetsTasks = {
  /** Reference sheets to be printed, as a PDF file; the title stands in the file. */
  draw: {
    input: { readonly sheets: readonly number[]; readonly paper: ReferencePaper; readonly title: string };
    output: Uint8Array;
  };
};
