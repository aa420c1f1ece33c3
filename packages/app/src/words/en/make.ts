/** Texts of this part of the app, in English. */
export const MAKE_EN = {} as const;
