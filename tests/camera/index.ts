export { encodePhoto } from './jpeg.js';
export { project } from './pinhole.js';
export { renderScene, setStage } from './render-scene.js';
export type { RenderOptions, SimulatedPhoto } from './render-scene.js';
export type { SheetPicture } from './sheet-picture.js';
export type { HideLook, HideTruth, MarkTruth, Scene, SceneTruth, SheetTruth } from './scene.js';
export { BENCH_SCENES, smaller } from './scenes.js';
export { judgeTrace } from './judge/judge-trace.js';
export type { Covered, Found, Judgement } from './judge/judge-trace.js';
