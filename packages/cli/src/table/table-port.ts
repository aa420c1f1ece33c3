import { createHash } from 'node:crypto';
import type { Server } from 'node:http';
import { systemCode } from '../io/system-words.js';
import { CliError } from '../cli-error.js';

/** Ports that are nobody's (RFC 6335, section 6: 49152 to 65535). */
const FIRST_PORT = 49152;
const PORTS = 16384;
const TRIES = 10;

/** The table is for the person at this computer: nobody else on the network can reach this address. */
export const HOST = '127.0.0.1';

/**
 * Always the same port for one folder, and hardly ever that of another one: so that each folder's table is a place of
 * its own to the browser, which keeps there what it could not save yet.
 */
export function portOfFolder(folder: string): number {
  return FIRST_PORT + (createHash('sha256').update(folder).digest().readUInt32BE(0) % PORTS);
}

/** Ports to be tried for a folder, in this order. */
export function portsOfFolder(folder: string): readonly number[] {
  const first = portOfFolder(folder) - FIRST_PORT;
  return Array.from({ length: TRIES }, (_, i) => FIRST_PORT + ((first + i) % PORTS));
}

/** Listens on the first of these ports that is free. Fails with a CliError where none is. */
export async function listenOn(server: Server, ports: readonly number[]): Promise<void> {
  for (const port of ports) if (await listens(server, port)) return;
  const which = ports.length === 1 ? `Port ${ports[0]} is` : `Ports ${ports[0]} to ${ports.at(-1)} are`;
  throw new CliError('bad-use', `${which} in use by another program; give a free one with --port.`);
}

function listens(server: Server, port: number): Promise<boolean> {
  return new Promise((resolve, reject) => {
    const done = (): void => {
      server.removeListener('error', fail);
      resolve(true);
    };
    const fail = (error: Error): void => {
      server.removeListener('listening', done);
      const code = systemCode(error);
      if (code === 'EADDRINUSE') resolve(false);
      else if (code === 'EACCES') {
        reject(
          new CliError('bad-use', `You have no right to use port ${port}; give another one with --port.`),
        );
      } else reject(error);
    };
    server.once('listening', done);
    server.once('error', fail);
    server.listen(port, HOST);
  });
}
