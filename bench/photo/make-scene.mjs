// One simulated photo, in a process of its own.
import { writeFileSync } from 'node:fs';

const { simulator, name, photo, root } = JSON.parse(process.argv[2]);
try {
  const { BENCH_SCENES, encodePhoto, renderScene } = await import(simulator);
  const scene = BENCH_SCENES.find((one) => one.name === name);
  writeFileSync(photo, await encodePhoto(renderScene(scene), scene.jpegQuality, root));
  process.send({});
} catch (error) {
  process.send({ error: `the photo could not be made: ${error.message}` });
}
