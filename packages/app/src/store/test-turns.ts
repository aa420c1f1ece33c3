import type { Random } from '@hidebound/geometry';

/** Time of a simulated world: all that is waited for goes on in an order of chance, one at a time. */
export interface Turns {
  /** Settled when chance picks it; never once its owner is gone. */
  wait(owner: number): Promise<void>;
  /** One of those who wait goes on; false where nobody waits. */
  step(): Promise<boolean>;
  end(owner: number): void;
}

export function createTurns(random: Random): Turns {
  let waiting: { readonly owner: number; readonly goOn: () => void }[] = [];
  const gone = new Set<number>();
  return {
    wait: (owner) =>
      new Promise((goOn) => {
        if (!gone.has(owner)) waiting.push({ owner, goOn });
      }),
    step: async () => {
      // What needs no turn happens first.
      await new Promise((done) => setImmediate(done));
      if (waiting.length === 0) return false;
      const [picked] = waiting.splice(random.integer(waiting.length), 1);
      picked!.goOn();
      await new Promise((done) => setImmediate(done));
      return true;
    },
    end: (owner) => {
      gone.add(owner);
      waiting = waiting.filter((each) => each.owner !== owner);
    },
  };
}
