/** Asks one thing at a time; what was wished meanwhile is forgotten but for the last. */
export interface Latest<I> {
  wish(input: I): void;
  /** Forgets what was wished, and the answer that is still to come. */
  forget(): void;
}

export function latest<I, O>(
  ask: (input: I) => Promise<O>,
  hear: (output: O, input: I) => void,
  fail: (error: unknown) => void,
): Latest<I> {
  let next: { readonly input: I } | undefined;
  let isBusy = false;
  let round = 0;

  const goOn = async (): Promise<void> => {
    if (isBusy || next === undefined) return;
    const { input } = next;
    next = undefined;
    isBusy = true;
    const asked = round;
    try {
      const output = await ask(input);
      if (asked === round) hear(output, input);
    } catch (error) {
      if (asked === round) fail(error);
    } finally {
      isBusy = false;
      void goOn();
    }
  };
  return {
    wish: (input) => {
      next = { input };
      void goOn();
    },
    forget: () => {
      next = undefined;
      round += 1;
    },
  };
}
