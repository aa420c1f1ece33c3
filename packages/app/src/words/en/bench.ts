/** Texts of this part of the app, in English. */
export const BENCH_EN = {} as const;
