/** Texts of this part of the app, in English. */
export const HIDE_EN = {} as const;
