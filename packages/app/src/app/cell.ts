/** A value that is watched: the one kind of state that the app has. */
export interface Cell<T> {
  get(): T;
  /** Watchers are told only where the value is another one. */
  set(value: T): void;
  update(change: (value: T) => T): void;
  /** Calls back after each change; gives back what ends the watching. */
  watch(listener: (value: T, before: T) => void): () => void;
}

export type Watched<T> = Pick<Cell<T>, 'get' | 'watch'>;

export function cell<T>(first: T): Cell<T> {
  let value = first;
  const listeners = new Set<(value: T, before: T) => void>();
  const set = (next: T): void => {
    if (Object.is(next, value)) return;
    const before = value;
    value = next;
    for (const listener of [...listeners]) listener(next, before);
  };
  return {
    get: () => value,
    set,
    update: (change) => set(change(value)),
    watch: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}
