import type { App } from '../../app/app.js';

/** A hide or offcut comes onto the table. */
export function showHide(app: App, path: string): void {
  app.place.update((place) => ({ ...place, hide: path }));
  app.goTo('hide');
}
