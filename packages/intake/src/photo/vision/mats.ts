/** Something that the vision library holds in its own memory until it is told to let go. */
interface Held {
  delete(): void;
}

/** Notes what is held; everything is let go of together. */
export type Keep = <T extends Held>(held: T) => T;

/** Runs the work and lets go of all that it kept, also where it throws. The result must not be one of them. */
export function withMats<Result>(work: (keep: Keep) => Result): Result {
  const held: Held[] = [];
  try {
    return work((one) => {
      held.push(one);
      return one;
    });
  } finally {
    for (const one of held.reverse()) one.delete();
  }
}
