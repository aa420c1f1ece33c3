/** Texts of this part of the app, in English. */
export const LAY_EN = {} as const;
