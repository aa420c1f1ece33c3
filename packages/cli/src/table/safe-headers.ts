/** What the page may load and run: its own files, pictures that it made itself, and nothing that is written into it. */
const PAGE_POLICY = {
  'default-src': "'none'",
  'script-src': "'self' 'wasm-unsafe-eval'",
  'style-src': "'self'",
  'img-src': "'self' blob: data:",
  'font-src': "'self'",
  'connect-src': "'self'",
  'worker-src': "'self' blob:",
  'manifest-src': "'self'",
  'frame-src': 'blob:',
  'object-src': "'none'",
  'base-uri': "'none'",
  'form-action': "'none'",
  'frame-ancestors': "'none'",
};

/** The vision library makes functions of text. It runs in a worker of its own, which has no page to do harm to. */
const VISION_POLICY = { ...PAGE_POLICY, 'script-src': "'self' 'wasm-unsafe-eval' 'unsafe-eval'" };
const VISION_WORKER = /(^|\/)[^/]*photo-worker[^/]*\.js$/;

/** An answer that is data: should a browser show it, it can do nothing. */
const DATA_POLICY = { 'default-src': "'none'", 'frame-ancestors': "'none'", sandbox: '' };

function policyText(policy: Readonly<Record<string, string>>): string {
  return Object.entries(policy)
    .map(([name, value]) => `${name} ${value}`.trim())
    .join('; ');
}

/** On every answer. Isolation from other origins is what shared memory asks for. */
const ALWAYS = {
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Embedder-Policy': 'require-corp',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'X-Content-Type-Options': 'nosniff',
  'X-Frame-Options': 'DENY',
  'Referrer-Policy': 'no-referrer',
} as const;

/** Headers of a file of the built app, by the path that was asked for. */
export function appHeaders(path: string): Readonly<Record<string, string>> {
  const policy = VISION_WORKER.test(path) ? VISION_POLICY : PAGE_POLICY;
  return { ...ALWAYS, 'Content-Security-Policy': policyText(policy) };
}

/** Headers of data from the folder, and of refusals. */
export function dataHeaders(): Readonly<Record<string, string>> {
  return { ...ALWAYS, 'Content-Security-Policy': policyText(DATA_POLICY), 'Cache-Control': 'no-store' };
}
