import { describe, expect, it } from 'vitest';
import { findTable } from './find-table.js';
import { KEY_HEADER, folderStore } from './folder-store.js';

const AT = 'http://127.0.0.1:50000/';

interface Asked {
  readonly url: string;
  readonly key: string | null;
  readonly body: unknown;
}

/** A server that answers the same to all; what it was asked is noted. */
function server(answer: () => Response): { fetch: typeof fetch; asked: Asked[] } {
  const asked: Asked[] = [];
  return {
    asked,
    fetch: (input, init) => {
      const body = typeof init?.body === 'string' ? (JSON.parse(init.body) as unknown) : undefined;
      const url = input instanceof URL ? input.href : input instanceof Request ? input.url : input;
      asked.push({ url, key: new Headers(init?.headers).get(KEY_HEADER), body });
      return Promise.resolve().then(answer);
    },
  };
}

function json(status: number, value: unknown): () => Response {
  return () => Response.json(value, { status });
}

const WRITE = { path: 'a.hide.json', base: 'r1', bytes: new TextEncoder().encode('{"ä":1}') };

describe('saving to the folder', () => {
  it('when a text is saved, it goes as text with the key and the revision that it came from', async () => {
    const file = { path: 'a.hide.json', size: 8, revision: 'r2' };
    const { fetch, asked } = server(json(200, { files: [file] }));
    const outcome = await folderStore({ at: AT, key: 'k', fetch }).save([
      WRITE,
      { path: 'b.svg', base: 'r7' },
    ]);
    expect(outcome).toEqual({ kind: 'saved', files: [file] });
    expect(asked).toEqual([
      {
        url: `${AT}api/save`,
        key: 'k',
        body: {
          writes: [
            { path: 'a.hide.json', base: 'r1', text: '{"ä":1}' },
            { path: 'b.svg', base: 'r7', remove: true },
          ],
        },
      },
    ]);
  });

  it('when a text begins with a byte order mark, the mark is sent along', async () => {
    const { fetch, asked } = server(json(200, { files: [] }));
    const bytes = new Uint8Array([0xef, 0xbb, 0xbf, 0x61]);
    await folderStore({ at: AT, key: 'k', fetch }).save([{ path: 'a.yaml', base: null, bytes }]);
    expect(asked[0]!.body).toMatchObject({ writes: [{ text: '\uFEFFa' }] });
  });

  it.each([
    [409, { conflicts: [{ path: 'a', revision: null }] }, { kind: 'conflict' }],
    [401, { sentence: 'No key.' }, { kind: 'failed', reason: 'not allowed', sentence: 'No key.' }],
    [403, { sentence: 'x' }, { kind: 'failed', reason: 'not allowed' }],
    [422, { sentence: 'x' }, { kind: 'failed', reason: 'not written', sentence: 'x' }],
    [413, { sentence: 'x' }, { kind: 'failed', reason: 'too large' }],
    [507, { sentence: 'Full.' }, { kind: 'failed', reason: 'no room', sentence: 'Full.' }],
    [503, { sentence: 'x' }, { kind: 'failed', reason: 'out of reach' }],
    [200, { files: [] }, { kind: 'failed', reason: 'out of reach' }],
  ])('when the answer is %i with %o, the outcome is %o', async (status, answer, outcome) => {
    const { fetch } = server(json(status, answer));
    expect(await folderStore({ at: AT, key: 'k', fetch }).save([WRITE])).toMatchObject(outcome);
  });

  it('when nobody answers, it is out of reach', async () => {
    const { fetch } = server(() => {
      throw new TypeError('Failed to fetch');
    });
    const outcome = await folderStore({ at: AT, key: 'k', fetch }).save([WRITE]);
    expect(outcome).toMatchObject({ kind: 'failed', reason: 'out of reach' });
  });
});

describe('reading from the folder', () => {
  // RFC 9110 (from memory): an entity tag is an opaque text in double quotes.
  it('when a file is read, its revision is the ETag without its quotes', async () => {
    const { fetch, asked } = server(() => new Response('abc', { headers: { ETag: '"r5"' } }));
    const read = await folderStore({ at: AT, key: 'k', fetch }).read('ä b/c&d.svg');
    expect(read).toEqual({ bytes: new TextEncoder().encode('abc'), revision: 'r5' });
    expect(new URL(asked[0]!.url).searchParams.get('path')).toBe('ä b/c&d.svg');
  });

  it('when there is no such file, there is none', async () => {
    const { fetch } = server(json(404, { code: 'x', sentence: 'x' }));
    expect(await folderStore({ at: AT, key: 'k', fetch }).read('a.svg')).toBeUndefined();
  });
});

describe('whether there is a table', () => {
  const html = (status: number) => (): Response =>
    new Response('<!doctype html>', { status, headers: { 'Content-Type': 'text/html' } });
  const failing = (): Response => {
    throw new TypeError('Failed to fetch');
  };
  it.each([
    ['a web host knows no such address', [], html(404), { kind: 'none' }],
    ['a web host gives its own page for each address', [], html(200), { kind: 'none' }],
    ['there is no network', [], failing, { kind: 'none' }],
    ['an address had a table once and nobody answers', ['k'], failing, { kind: 'out of reach' }],
    ['no key is known', [], json(401, { code: 'key', sentence: 'x' }), { kind: 'key needed' }],
    ['no key is right', ['k', 'l'], json(401, { code: 'key', sentence: 'x' }), { kind: 'key needed' }],
    [
      'it answers',
      ['k'],
      json(200, { folder: 'bags', files: [] }),
      { kind: 'table', key: 'k', folder: 'bags' },
    ],
  ])('when %s, it is told', async (_, keys, answer, found) => {
    expect(await findTable(AT, keys, true, server(answer).fetch)).toMatchObject(found);
  });

  it('when no table marked the page and no key is known, nobody is asked', async () => {
    const asked = (): Promise<Response> => Promise.reject(new Error('asked'));
    expect(await findTable(AT, [], false, asked)).toEqual({ kind: 'none' });
  });
});
