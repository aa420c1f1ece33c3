/** What a layout names as its maker; the package says the same. */
export const APP_VERSION = '0.1.0';
