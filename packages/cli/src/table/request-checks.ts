import type { IncomingHttpHeaders } from 'node:http';
import { TableRefusal } from './refusal.js';
import { isSameKey } from './table-key.js';

export const KEY_HEADER = 'x-hidebound-key';

/**
 * Refuses what a page of another origin sent, or a name of another host that leads to this computer: by the names of
 * the host and of the origin, and by what the browser says of where a request came from (Fetch standard, "Origin"
 * header; W3C Fetch Metadata, "Sec-Fetch-Site"). Fails with a TableRefusal 403.
 */
export function refuseForeign(headers: IncomingHttpHeaders, port: number): void {
  const { host, origin } = headers;
  const site = headers['sec-fetch-site'];
  if (host === undefined || !hostsOf(port).includes(host.toLowerCase())) {
    throw foreign('The table answers only at its own address, which it told when it was opened.');
  }
  if (origin !== undefined && origin !== `http://${host.toLowerCase()}`) {
    throw foreign('The table does not answer to pages of other addresses.');
  }
  if (site !== undefined && site !== 'same-origin' && site !== 'none') {
    throw foreign('The table does not answer to what other pages ask for; type its address yourself.');
  }
}

/** Browsers leave out the port that is usual for the web. */
function hostsOf(port: number): readonly string[] {
  const names = ['127.0.0.1', 'localhost'];
  return [...names.map((name) => `${name}:${port}`), ...(port === 80 ? names : [])];
}

function foreign(sentence: string): TableRefusal {
  return new TableRefusal(403, 'foreign-request', sentence);
}

/** Fails with a TableRefusal 401 for a request without the key of this table. */
export function refuseKeyless(headers: IncomingHttpHeaders, key: string): void {
  const given = headers[KEY_HEADER];
  if (typeof given === 'string' && isSameKey(given, key)) return;
  throw new TableRefusal(
    401,
    'key-needed',
    'The key of this table is missing or wrong; open the address that "hidebound table" told.',
  );
}
