/**
 * One worker as its owner sees it, be it a thread of Node or a worker of a browser. Messages are plain data that can be
 * cloned. Listeners are set once, before the first message is posted.
 */
export interface WorkerHandle {
  post(message: unknown): void;
  onMessage(listener: (message: unknown) => void): void;
  /** It threw where nobody caught it, could not be loaded, or ended. */
  onFailure(listener: (reason: unknown) => void): void;
  /** Ends it at once, whatever it is doing. */
  terminate(): void;
}

/** The owner as a worker sees it. */
export interface OwnerPort {
  post(message: unknown): void;
  onMessage(listener: (message: unknown) => void): void;
}

/** How a caller asks for a stop; an `AbortSignal` is one. */
export interface StopSignal {
  readonly aborted: boolean;
  addEventListener(type: 'abort', listener: () => void): void;
  removeEventListener(type: 'abort', listener: () => void): void;
}
