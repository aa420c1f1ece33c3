import type { Sentence } from '../sentence.js';

/** What can make such a file unreadable. */
export const DXF_REFUSALS = {
  'dxf-binary': () => 'This is a DXF in binary form; export it as DXF in text (ASCII) form.',
} as const satisfies Readonly<Record<string, Sentence>>;

/** Findings that are part of a result. */
export const DXF_FINDINGS = {} as const satisfies Readonly<Record<string, Sentence>>;
