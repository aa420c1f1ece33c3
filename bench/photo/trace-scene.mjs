// One photo traced and judged, in a process of its own, so that its memory can be measured.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { decodePhoto } from '@hidebound/intake/node';
import { loadVision, traceHide } from '@hidebound/intake/photo';
import { drawOverlay } from './overlay.mjs';

const { simulator, name, photo, root, out } = JSON.parse(process.argv[2]);

async function run() {
  const { BENCH_SCENES, judgeTrace, setStage } = await import(simulator);
  const scene = BENCH_SCENES.find((one) => one.name === name);
  const bytes = readFileSync(photo);
  const { vision } = await loadVision();
  const cpu = process.cpuUsage();
  const started = performance.now();
  const decoded = await decodePhoto(bytes, `${name}.jpg`);
  const stages = [];
  const read = traceHide(
    [decoded],
    {
      id: name,
      sideUp: 'grain',
      pictureFile: `${name}.straight.jpg`,
      barsOf: () => scene.sheets.readings,
      onStage: (stage) => stages.push({ stage, at: performance.now() - started }),
    },
    vision,
  );
  const seconds = (performance.now() - started) / 1000;
  const { user, system } = process.cpuUsage(cpu);
  const peakMb = process.resourceUsage().maxRSS / 1024;
  const truth = setStage(scene).hides[0];
  const judgement = judgeTrace(read.hide, truth);
  if (out !== undefined) await drawOverlay(read, truth, judgement, join(out, `${name}.png`), root);
  return {
    judgement,
    seconds,
    cpuSeconds: (user + system) / 1e6,
    peakMb,
    stages: stages.map(({ stage, at }, i) => ({
      stage,
      ms: Math.round((stages[i + 1]?.at ?? 1000 * seconds) - at),
    })),
    diagnostics: read.diagnostics.map(({ code, params }) => ({ code, params })),
    candidates: read.hide.candidates.length,
  };
}

try {
  process.send(await run());
} catch (error) {
  process.send({ error: `${error.code ?? error.name}: ${error.message}`, stack: error.stack });
}
