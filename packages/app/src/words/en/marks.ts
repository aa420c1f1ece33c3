/** Texts of this part of the app, in English. */
export const MARKS_EN = {} as const;
