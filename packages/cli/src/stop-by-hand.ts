/** Watches for Ctrl-C and for a request to end. */
export interface StopByHand {
  readonly isAsked: () => boolean;
  /** Gives the signals back to the system. */
  readonly release: () => void;
}

const SIGNALS = ['SIGINT', 'SIGTERM'] as const;

/** The first signal asks for a stop; a second one ends the program at once, as it would without this. */
export function watchForStop(onFirst: () => void): StopByHand {
  let asked = false;
  const listen = (): void => {
    asked = true;
    release();
    onFirst();
  };
  const release = (): void => {
    for (const signal of SIGNALS) process.removeListener(signal, listen);
  };
  for (const signal of SIGNALS) process.on(signal, listen);
  return { isAsked: () => asked, release };
}
