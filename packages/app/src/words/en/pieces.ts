/** Texts of this part of the app, in English. */
export const PIECES_EN = {} as const;
