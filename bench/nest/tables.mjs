// Results as Markdown tables.
import { PUBLISHED } from './published.mjs';

const DASH = '–';

/** A layout this near to 100 % lies within 2 µm of the exact length of a strip 1 m long. */
const EXACT = 100 - 2e-4;

export function mean(values) {
  return values.length === 0 ? undefined : values.reduce((sum, value) => sum + value, 0) / values.length;
}

const fixed = (value, decimals = 2) => (value === undefined ? DASH : value.toFixed(decimals));
const seconds = (ms) => (ms === undefined ? DASH : fixed(ms / 1000, ms < 10_000 ? 2 : 1));
const percent = (share) => (Number.isFinite(share) ? fixed(100 * share, 1) : DASH);
const defined = (values) => values.filter((value) => value !== undefined);
const short = (text) => text?.slice(0, 12) ?? DASH;

function table(heads, rows) {
  const line = (cells) => `| ${cells.join(' | ')} |`;
  // The first column is a name, the others are numbers.
  return [line(heads), line(heads.map((_, i) => (i === 0 ? '---' : '---:'))), ...rows.map(line), ''];
}

/** Results of one instance, over seeds. */
function groups(results) {
  const byName = new Map();
  for (const result of results) {
    const key = `${result.kind}/${result.name}`;
    byName.set(key, [...(byName.get(key) ?? []), result]);
  }
  return [...byName.values()];
}

function spread(values, decimals = 2) {
  if (values.length === 0) return DASH;
  const [least, most] = [Math.min(...values), Math.max(...values)];
  const middle = fixed(mean(values), decimals);
  return least === most ? middle : `${middle} (${fixed(least, decimals)} ${DASH} ${fixed(most, decimals)})`;
}

function failureOf(runs) {
  const [{ unsupported }] = runs;
  if (unsupported !== undefined) return 'unsupported';
  const bad = runs.filter(({ fault, failed }) => fault !== undefined || failed !== undefined).length;
  return bad === 0 ? undefined : `${bad} of ${runs.length} REFUSED`;
}

const common = (runs) => [
  seconds(mean(defined(runs.map(({ firstMs }) => firstMs)))),
  seconds(mean(defined(runs.map(({ ownMs }) => ownMs)))),
  seconds(mean(defined(runs.map(({ endMs }) => endMs)))),
  fixed(Math.max(...runs.map(({ searchPeakMb, peakMb }) => searchPeakMb ?? peakMb ?? 0)), 0),
  short(runs[0].checksum),
];
const COMMON_HEADS = ['first, s', '95 % of own, s', 'end, s', 'peak, MB', 'checksum'];

/** First tables: each kind with its own figures. */
export function mainTables(results) {
  const engine = results.filter(({ method }) => method === 'engine');
  return Object.entries(MAIN).flatMap(([title, { kinds, heads, row, after }]) => {
    const own = groups(engine.filter(({ kind }) => kinds.includes(kind)));
    if (own.length === 0) return [];
    const rows = own.map((runs) => [runs[0].name, runs[0].asked || DASH, ...row(runs), ...common(runs)]);
    return [
      `### ${title}`,
      '',
      ...table(['instance', 'asked', ...heads, ...COMMON_HEADS], rows),
      ...(after?.(own) ?? []),
    ];
  });
}

/** What the engine refuses to begin has no figures; what fails has 0. */
const isRun = (runs) => runs.every(({ unsupported }) => unsupported === undefined);
const goodnessOf = (runs) => (isRun(runs) ? runs.map(({ goodness }) => goodness) : []);

const MAIN = {
  'Strips: density, % of width times length': {
    kinds: ['strip', 'real'],
    heads: [
      'density',
      'published average',
      'average before 2025',
      'best',
      'of average, %',
      'of best, %',
      '95 % of average, s',
    ],
    row: stripRow,
    after: stripMeans,
  },
  'Hides: laid, hides opened, leather used up': {
    kinds: ['leather'],
    heads: ['laid', 'area laid, % of asked', 'hides (least by area)', 'used up, m²', 'laid of used up, %'],
    row: leatherRow,
  },
  'Bins cut up without waste: area laid': {
    kinds: ['bins'],
    heads: ['laid', 'area laid, %', 'whole'],
    row: binsRow,
    after: (own) => meanLine(own, 'area laid'),
  },
  'Many equal pieces: density two diameters from the edge': {
    kinds: ['many'],
    heads: ['laid', 'density, %', 'double lattice, %', 'of lattice, %'],
    row: manyRow,
    after: (own) => meanLine(own, 'density over the double lattice'),
  },
};

function stripRow(runs) {
  const { average, earlierAverage, best } = PUBLISHED[runs[0].name] ?? {};
  const density = isRun(runs) ? mean(goodnessOf(runs)) : undefined;
  const top = best ?? runs[0].optimum;
  const exact = runs.filter(({ goodness }) => goodness >= EXACT).length;
  const shown = top === 100 ? ` exact ${exact} of ${runs.length}` : '';
  return [
    failureOf(runs) ?? spread(goodnessOf(runs), 3) + shown,
    fixed(average),
    fixed(earlierAverage),
    fixed(top),
    percent(average && density / average),
    percent(top && density / top),
    seconds(mean(defined(runs.map(({ averageMs }) => averageMs)))),
  ];
}

/** Mean over instances of the mean over seeds of density over the published average. */
function stripMeans(own) {
  const ratios = own.flatMap((runs) => {
    const average = PUBLISHED[runs[0].name]?.average;
    return average === undefined || !isRun(runs) ? [] : [[runs[0].name, mean(goodnessOf(runs)) / average]];
  });
  if (ratios.length === 0) return [];
  const [worst, least] = ratios.reduce((a, b) => (b[1] < a[1] ? b : a));
  return [
    `Mean over ${ratios.length} instances of density over the published average: **${percent(mean(ratios.map(([, ratio]) => ratio)))} %**; least: ${worst}, ${percent(least)} %.`,
    '',
  ];
}

function meanLine(own, what) {
  const means = defined(own.map((runs) => mean(goodnessOf(runs))));
  if (means.length === 0) return [];
  return [
    `Mean over ${means.length} instances of ${what}: **${fixed(mean(means))} %**; least: ${fixed(Math.min(...means))} %.`,
    '',
  ];
}

function leatherRow(runs) {
  const [{ mode, asked, askedM2, netM2, leastSheets }] = runs;
  const isFill = mode === 'fill';
  const bound = isFill ? ` (bound ${percent(Math.min(1, netM2 / askedM2))})` : '';
  return [
    failureOf(runs) ?? `${spread(piecesOf(runs), 0)} of ${asked}`,
    percent((mean(defined(runs.map(({ laidM2 }) => laidM2))) ?? NaN) / askedM2) + bound,
    isFill ? DASH : `${spread(defined(runs.map(({ sheets }) => sheets)), 0)} (${leastSheets})`,
    isFill ? DASH : spread(defined(runs.map(({ usedUpM2 }) => usedUpM2)), 4),
    isFill ? DASH : spread(goodnessOf(runs)),
  ];
}

function binsRow(runs) {
  const whole = runs.filter(({ missed, goodness }) => missed === 0 && goodness > 0).length;
  return [
    failureOf(runs) ?? `${spread(piecesOf(runs), 1)} of ${runs[0].asked}`,
    spread(goodnessOf(runs)),
    isRun(runs) ? `${whole} of ${runs.length}` : DASH,
  ];
}

function manyRow(runs) {
  return [
    failureOf(runs) ?? spread(piecesOf(runs), 0),
    spread(defined(runs.map(({ density }) => density))),
    fixed(runs[0].lattice),
    spread(goodnessOf(runs), 1),
  ];
}

const piecesOf = (runs) => defined(runs.map(({ pieces }) => pieces));

/** Second table: the same goodness for all three. */
export function baselineTable(results) {
  const measured = results.filter(({ kind }) => kind !== 'growth');
  if (!measured.some(({ method }) => method !== 'engine')) return [];
  const rows = groups(measured).map((runs) => {
    const of = (method) => runs.filter((run) => run.method === method && run.unsupported === undefined);
    const [engine, greedy, skyline] = ['engine', 'greedy', 'skyline'].map((method) =>
      mean(goodnessOf(of(method))),
    );
    const ratio = (other) => (engine === undefined || !other ? DASH : fixed(engine / other, 3));
    return [
      runs[0].name,
      MEASURE_NAMES[runs[0].kind === 'leather' ? runs[0].mode : runs[0].kind],
      fixed(engine),
      baselineCell(of('greedy'), greedy),
      baselineCell(of('skyline'), skyline),
      ratio(greedy),
      ratio(skyline),
    ];
  });
  const heads = ['instance', 'measure', 'engine', 'greedy', 'boxes', 'engine / greedy', 'engine / boxes'];
  return ['### Against the baselines', '', ...table(heads, rows)];
}

const MEASURE_NAMES = {
  strip: 'density',
  real: 'density',
  fill: 'area laid of asked',
  placeAll: 'laid of used up',
  bins: 'area laid',
  many: 'of double lattice',
};

/** The figure, hides and leather where they count, and plainly what could not be laid. */
function baselineCell([run], goodness) {
  if (run === undefined) return DASH;
  if (run.fault !== undefined || run.failed !== undefined) return `REFUSED: ${run.fault ?? run.failed}`;
  const hides = run.sheets === undefined ? '' : `; ${run.sheets} hides, ${fixed(run.usedUpM2, 4)} m²`;
  const isCounted = run.asked > 0 && run.missed > 0;
  return `${fixed(goodness)}${hides}${isCounted ? `; ${run.missed} of ${run.asked} not laid` : ''}`;
}

/** Third table: time to the first valid layout, and the exponent of its growth. */
export function growthTable(results, referenceOf) {
  const own = groups(results.filter(({ kind, method }) => kind === 'growth' && method === 'engine'));
  return [...groupBySeries(own, referenceOf)].flatMap(([name, members]) => {
    const points = members.map((runs) => ({
      size: referenceOf(runs[0]).size,
      first: mean(
        defined(runs.filter(({ firstFault }) => firstFault === undefined).map(({ firstMs }) => firstMs)),
      ),
      runs,
    }));
    const rows = points.map(({ size, first, runs }) => [
      size,
      runs[0].corners,
      failureOf(runs) ?? spread(defined(runs.map(({ firstPieces }) => firstPieces)), 1),
      seconds(first),
      fixed(first === undefined ? undefined : first / size, 3),
      fixed(Math.max(...runs.map(({ searchPeakMb }) => searchPeakMb ?? 0)), 0),
    ]);
    const heads = [name, 'hide corners', 'laid', 'first valid layout, s', `ms / ${name}`, 'peak, MB'];
    const slope = exponent(points.filter(({ first }) => first > 0));
    const line = slope === undefined ? [] : [`Least-squares exponent: **${fixed(slope)}**`, ''];
    return [`### Time to the first valid layout against ${name}`, '', ...table(heads, rows), ...line];
  });
}

function groupBySeries(own, referenceOf) {
  const series = new Map();
  for (const runs of own) {
    const key = referenceOf(runs[0]).series;
    series.set(key, [...(series.get(key) ?? []), runs]);
  }
  return series;
}

/** Slope of log time over log size. */
export function exponent(points) {
  if (points.length < 2) return undefined;
  const xs = points.map(({ size }) => Math.log(size));
  const ys = points.map(({ first }) => Math.log(first));
  const [mx, my] = [mean(xs), mean(ys)];
  const across = xs.reduce((sum, x) => sum + (x - mx) ** 2, 0);
  return xs.reduce((sum, x, i) => sum + (x - mx) * (ys[i] - my), 0) / across;
}

/** Everything that was refused, failed or read with a remark, in words. */
export function remarks(results) {
  const lines = results.flatMap(({ name, method, seed, fault, failed, unsupported, notes, firstFault }) => [
    ...notes.map((note) => `* ${name}: ${note}`),
    ...(fault === undefined
      ? []
      : [`* ${name}, ${method}, seed ${seed}: the exact check refuses it: ${fault}`]),
    ...(firstFault === undefined ? [] : [`* ${name}, seed ${seed}: first layout refused: ${firstFault}`]),
    ...(failed === undefined ? [] : [`* ${name}, ${method}, seed ${seed}: failed: ${failed}`]),
    ...(unsupported === undefined ? [] : [`* ${name}: ${unsupported}`]),
  ]);
  return lines.length === 0 ? [] : ['### Remarks', '', ...new Set(lines), ''];
}
