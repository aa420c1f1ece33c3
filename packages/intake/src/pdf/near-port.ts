type Listener = (event: { readonly data: unknown }) => void;

/** One end of a channel within one thread, as pdf.js's two halves speak through it. */
export interface NearPort {
  postMessage(data: unknown): void;
  addEventListener(name: string, listener: Listener): void;
  removeEventListener(name: string, listener: Listener): void;
  terminate(): void;
}

/**
 * Two ends of a channel that hands messages on as they are. pdf.js's own copies each of them whole, which takes longer
 * than parsing; only lists of operators need new lists, since the sender empties its own. Messages come one after the
 * other, each in a later turn.
 */
export function nearPorts(): readonly [NearPort, NearPort] {
  const listeners: [Set<Listener>, Set<Listener>] = [new Set(), new Set()];
  const end = (own: 0 | 1): NearPort => ({
    postMessage: (data) => {
      const event = { data: withOwnLists(data) };
      const others = listeners[own === 0 ? 1 : 0];
      void Promise.resolve().then(() => {
        for (const listener of [...others]) listener(event);
      });
    },
    addEventListener: (_name, listener) => void listeners[own].add(listener),
    removeEventListener: (_name, listener) => void listeners[own].delete(listener),
    terminate: () => listeners[own].clear(),
  });
  return [end(0), end(1)];
}

interface ChunkMessage {
  readonly chunk?: { readonly fnArray?: readonly number[]; readonly argsArray?: readonly unknown[] };
}

function withOwnLists(data: unknown): unknown {
  const { chunk } = data as ChunkMessage;
  if (chunk?.fnArray === undefined || chunk.argsArray === undefined) return data;
  const lists = { fnArray: [...chunk.fnArray], argsArray: [...chunk.argsArray] };
  return { ...(data as object), chunk: { ...chunk, ...lists } };
}
