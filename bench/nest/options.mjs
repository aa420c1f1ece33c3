// The bench's options, as plain data. See README.md.

export const KINDS = ['strip', 'real', 'leather', 'bins', 'many', 'growth'];
export const METHODS = ['engine', 'greedy', 'skyline'];

export const USAGE = `pnpm bench:nest --data DIR [--seconds 60] [--seeds 1,2] [--streams 2] [--only albano,fu]
  [--kind strip,real,leather,bins,many,growth] [--methods engine,greedy,skyline] [--turns fixed|quarter|eighth|free]
  [--shapes 1] [--jobs 1] [--jsonl FILE] [--cache DIR] [--freeze]`;

const words = (text) => text.split(',').filter((word) => word !== '');
const number = (text, name) => {
  const value = Number(text);
  if (!Number.isFinite(value) || value < 0) throw new Error(`--${name} takes a number, not "${text}"`);
  return value;
};
const someOf = (known) => (text, name) => {
  const unknown = words(text).find((word) => !known.includes(word));
  if (unknown !== undefined) throw new Error(`--${name} knows ${known.join(', ')}, not "${unknown}"`);
  return words(text);
};

/** Every option that takes a value: its default and how it is read. */
const VALUES = {
  data: [undefined, (text) => text],
  seconds: [60, number],
  seeds: [[1, 2], (text, name) => words(text).map((word) => number(word, name))],
  streams: [2, number],
  only: [undefined, words],
  kind: [KINDS, someOf(KINDS)],
  methods: [METHODS, someOf(METHODS)],
  turns: ['fixed', (text, name) => someOf(['fixed', 'quarter', 'eighth', 'free'])(text, name)[0]],
  shapes: [1, number],
  jobs: [1, number],
  jsonl: [undefined, (text) => text],
  cache: [undefined, (text) => text],
};
const FLAGS = ['freeze'];

/** Throws with one plain sentence for anything that it doesn't know. */
export function readOptions(args) {
  const options = Object.fromEntries(Object.entries(VALUES).map(([name, [fallback]]) => [name, fallback]));
  for (let i = 0; i < args.length; i++) {
    const name = args[i].replace(/^--/, '');
    // pnpm passes on the "--" that ends its own options.
    if (args[i] === '--') continue;
    if (FLAGS.includes(name)) options[name] = true;
    else if (VALUES[name] === undefined) throw new Error(`there is no option ${args[i]}\n${USAGE}`);
    else if (args[i + 1] === undefined) throw new Error(`--${name} needs a value`);
    else options[name] = VALUES[name][1](args[++i], name);
  }
  if (options.data === undefined && options.kind.some((kind) => !['many', 'growth'].includes(kind))) {
    throw new Error(`--data names the folder that holds strip/, real/, leather/ and bins/\n${USAGE}`);
  }
  return options;
}
