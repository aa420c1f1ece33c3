let isAsked = false;

/**
 * Asks the browser once not to clear what people made when the disk runs short. It may refuse; then all goes on as
 * before. Asked for when something is first kept, not at the first sight of the page: some browsers ask the person.
 */
export function askToPersist(): void {
  if (isAsked || typeof navigator === 'undefined' || navigator.storage?.persist === undefined) return;
  isAsked = true;
  void navigator.storage
    .persisted()
    .then((isPersistent) => isPersistent || navigator.storage.persist())
    .catch(() => undefined);
}
