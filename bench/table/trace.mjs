// What a frame costs, out of the browser's own trace (Chrome's trace event format: ts and dur in microseconds).

const SCRIPT = [
  'EventDispatch',
  'FireAnimationFrame',
  'FunctionCall',
  'TimerFire',
  'RunMicrotasks',
  'EvaluateScript',
  'MinorGC',
  'MajorGC',
  'V8.GC_MC_BACKGROUND_MARKING',
];
const STYLE = ['UpdateLayoutTree', 'ParseAuthorStyleSheet', 'ScheduleStyleRecalculation'];
const LAYOUT = ['Layout', 'HitTest'];
const PAINT = ['PrePaint', 'Paint', 'Layerize', 'Commit', 'UpdateLayer', 'CompositeLayers'];
const RASTER = ['RasterTask', 'ImageDecodeTask', 'Decode Image', 'Decode LazyPixelRef'];

/** Milliseconds of each frame of the page's main thread, and of painting and rasterizing apart. */
export function framesOf(trace) {
  const { traceEvents } = JSON.parse(trace);
  const main = mainThread(traceEvents);
  const ofMain = traceEvents.filter(({ pid, tid }) => pid === main.pid && tid === main.tid);
  const starts = ofMain
    .filter(({ name }) => name === 'BeginMainThreadFrame')
    .map(({ ts }) => ts)
    .sort((a, b) => a - b);
  const sums = (events, names) => perFrame(starts, mergedSpans(events, new Set(names)));
  return {
    count: starts.length,
    work: sums(ofMain, [...SCRIPT, ...STYLE, ...LAYOUT]),
    script: sums(ofMain, SCRIPT),
    style: sums(ofMain, STYLE),
    layout: sums(ofMain, LAYOUT),
    paint: sums(ofMain, PAINT),
    raster: perFrame(
      starts,
      traceEvents
        .filter(({ name, dur }) => RASTER.includes(name) && dur > 0)
        .map(({ ts, dur }) => [ts, ts + dur]),
    ),
  };
}

/** Each task of the page's thread: when it began (seconds from the first), its time on the clock and on the processor. */
export function tasksOf(trace) {
  const { traceEvents } = JSON.parse(trace);
  const main = mainThread(traceEvents);
  const tasks = traceEvents.filter(
    ({ pid, tid, ph, name }) => pid === main.pid && tid === main.tid && ph === 'X' && name === 'RunTask',
  );
  const first = Math.min(...tasks.map(({ ts }) => ts));
  return tasks.map(({ ts, dur = 0, tdur = 0 }) => ({
    atS: (ts - first) / 1e6,
    clockMs: dur / 1000,
    processorMs: tdur / 1000,
  }));
}

function mainThread(events) {
  const counts = new Map();
  for (const { name, pid, tid } of events)
    if (name === 'PrePaint') counts.set(`${pid} ${tid}`, (counts.get(`${pid} ${tid}`) ?? 0) + 1);
  const [[key] = []] = [...counts].sort((a, b) => b[1] - a[1]);
  if (key === undefined) throw new Error('The trace holds no frames of a page.');
  const [pid, tid] = key.split(' ').map(Number);
  return { pid, tid };
}

/** Spans of the named events without what lies within another of them, so that nothing is counted twice. */
function mergedSpans(events, names) {
  const spans = events
    .filter(({ name, dur }) => names.has(name) && dur > 0)
    .map(({ ts, dur }) => [ts, ts + dur])
    .sort((a, b) => a[0] - b[0]);
  const merged = [];
  for (const [from, to] of spans) {
    const last = merged.at(-1);
    if (last !== undefined && from < last[1]) last[1] = Math.max(last[1], to);
    else merged.push([from, to]);
  }
  return merged;
}

/** What is done until the next frame begins belongs to the frame that began last. */
function perFrame(starts, spans) {
  const sums = starts.map(() => 0);
  for (const [from, to] of spans) {
    let at = -1;
    while (at + 1 < starts.length && starts[at + 1] <= from) at++;
    if (at >= 0) sums[at] += (to - from) / 1000;
  }
  return sums;
}

export function percentile(values, share) {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.ceil(share * sorted.length) - 1)] ?? 0;
}
