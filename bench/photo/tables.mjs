// The figures of all scenes as Markdown tables.

const median = (values) => {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted.length === 0 ? NaN : sorted[sorted.length >> 1];
};
const mm = (value) => (Number.isFinite(value) ? value.toFixed(2) : '–');
const percent = (share) => (Number.isFinite(share) ? (100 * share).toFixed(2) : '–');
const farthest = (values) => values.reduce((a, b) => (Math.abs(b) > Math.abs(a) ? b : a), 0);

function byKind(results) {
  const kinds = [...new Set(results.map(({ kind }) => kind))];
  return [...kinds.map((kind) => [kind, results.filter((one) => one.kind === kind)]), ['all', results]];
}

/** Of each kind of scene: the middle one and the worst one. */
export function mainTable(results) {
  const rows = byKind(results).map(([kind, all]) => {
    const done = all.filter(({ error }) => error === undefined);
    const of = (pick) => done.map(({ judgement }) => pick(judgement));
    const areas = of((j) => j.areaError);
    const scales = of((j) => j.scaleError);
    return [
      kind,
      `${done.length} of ${all.length}`,
      `${mm(median(of((j) => j.medianMm)))} / ${mm(Math.max(...of((j) => j.medianMm)))}`,
      `${mm(median(of((j) => j.worstMm)))} / ${mm(Math.max(...of((j) => j.worstMm)))}`,
      `${percent(median(areas.map(Math.abs)))} / ${percent(farthest(areas))}`,
      `${percent(median(scales.map(Math.abs)))} / ${percent(farthest(scales))}`,
      `${median(done.map(({ seconds }) => seconds)).toFixed(1)} / ${median(done.map(({ cpuSeconds }) => cpuSeconds)).toFixed(1)}`,
      `${(Math.max(...done.map(({ peakMb }) => peakMb)) / 1000).toFixed(2)}`,
    ];
  });
  return table(
    [
      'kind',
      'traced',
      'outline, median mm (middle / worst scene)',
      'outline, worst place mm',
      'area %',
      'scale %',
      'seconds (by the clock / of the processor)',
      'most memory, GB',
    ],
    rows,
  );
}

/** Which marks were found, and how far off. */
export function marksTable(results) {
  const rows = byKind(results).map(([kind, all]) => {
    const done = all.filter(({ error }) => error === undefined).map(({ judgement }) => judgement);
    const of = (pick) => {
      const founds = done.map(pick);
      const sum = (key) => founds.reduce((total, found) => total + found[key], 0);
      return `${sum('found')} of ${sum('asked')}, ${mm(median(founds.flatMap(({ offMm }) => offMm)))}`;
    };
    const count = (key) => String(done.reduce((total, judgement) => total + judgement[key], 0));
    return [
      kind,
      of((j) => j.openings),
      of((j) => j.chalk),
      of((j) => j.marks),
      count('falseOpenings'),
      count('falseMarks'),
    ];
  });
  return table(
    [
      'kind',
      'openings (found, off by mm)',
      'chalked',
      'marks as candidates',
      'false openings',
      'false candidates of even odds or better',
    ],
    rows,
  );
}

/** How often the truth lies within what is said. */
export function coverTable(results) {
  const rows = byKind(results).map(([kind, all]) => {
    const done = all.filter(({ error }) => error === undefined).map(({ judgement }) => judgement.covered);
    const count = (key) => `${done.filter((covered) => covered[key]).length} of ${done.length}`;
    return [
      kind,
      count('scale'),
      count('area'),
      count('worst'),
      percent(median(done.map(({ placesShare }) => placesShare))),
      `${percent(median(done.map(({ saidScale }) => saidScale)))} / ${percent(median(done.map(({ saidArea }) => saidArea)))}`,
    ];
  });
  return table(
    [
      'kind',
      'scale within what is said',
      'area',
      'worst place',
      'places within what is said, %',
      'said of scale / area, %',
    ],
    rows,
  );
}

function table(head, rows) {
  const line = (cells) => `| ${cells.join(' | ')} |`;
  return [line(head), line(head.map(() => '---')), ...rows.map(line)];
}
