import type { App } from '../../app/app.js';
import type { Stage } from '../../drawing/stage.js';
import type { G } from '@svgdotjs/svg.js';
import type { Box } from '@hidebound/geometry';
import type { LayablePiece } from '@hidebound/leather';
import { benchOf, choose, orderOf, readBoardSoon } from './bench.js';
import { drawBoard } from './board/draw-board.js';
import { chosenHand } from './large/chosen-hand.js';
import { drawLarge } from './large/draw-large.js';
import { drawPatterns } from './large/draw-patterns.js';
import type { LaidFile } from './large/draw-patterns.js';
import { numbersShape } from './numbers-shape.js';
import { receiveFiles } from '../../shell/receive-files.js';
import { bringFiles } from './take.js';

/** What the hands have to know of what is drawn. */
export interface Scene {
  readonly layer: G;
  /** The one piece that is drawn large. */
  readonly large: LayablePiece | undefined;
  readonly files: readonly LaidFile[];
}

/** Draws what is chosen, anew whenever something of it changed, and lays the hand on it that goes with it. */
export function openPieces(app: App, stage: Stage): () => void {
  const layer = stage.layer('pieces');
  let scene: Scene = { layer, large: undefined, files: [] };
  let drawn: readonly unknown[] = [];
  let fitted: readonly unknown[] = [];
  let queued = 0;

  const draw = (): void => {
    queued = 0;
    readBoardSoon(app);
    const bench = benchOf(app);
    if (bench.chosen.kind === 'piece' && orderOf(app)?.articles[bench.chosen.article] === undefined)
      choose(app, { kind: 'all' });
    const now = keyOf(app, stage);
    if (isSame(now, drawn)) return;
    drawn = now;
    layer.clear();
    const { box, ...rest } = drawScene(app, stage, layer);
    scene = { layer, ...rest };
    const size = stage.size.get();
    const fitKey = [bench.chosen, size.width, size.height, box && JSON.stringify(box)];
    if (box === undefined || isSame(fitKey, fitted)) return;
    fitted = fitKey;
    stage.fit(box);
  };
  const drawSoon = (): void => {
    if (queued === 0) queued = requestAnimationFrame(draw);
  };

  stage.setView({ ...stage.view.get(), turnDeg: 0 });
  const ends = [
    ...[app.job, app.place, app.redraws, app.prefs, stage.size].map((watched) =>
      (watched as App['redraws']).watch(drawSoon),
    ),
    stage.lay(chosenHand(app, stage, () => scene)),
    receiveFiles(stage.element, (files) => {
      bringFiles(app, files).catch((error: unknown) => app.tellFailure(error));
    }),
  ];
  draw();
  return () => {
    cancelAnimationFrame(queued);
    for (const end of ends) end();
    layer.remove();
  };
}

function keyOf(app: App, stage: Stage): readonly unknown[] {
  const bench = benchOf(app);
  const { width, height } = stage.size.get();
  const shown =
    bench.chosen.kind === 'patterns' ? bench.chosen.paths.map((path) => bench.shown.get(path)?.shown) : [];
  return [
    bench.chosen,
    bench.board,
    orderOf(app),
    app.prefs.get(),
    bench.measured,
    bench.rings,
    bench.numbers,
    [...bench.left].join('|'),
    width,
    height,
    ...shown,
  ];
}

function isSame(one: readonly unknown[], other: readonly unknown[]): boolean {
  return one.length === other.length && one.every((each, i) => each === other[i]);
}

function drawScene(
  app: App,
  stage: Stage,
  layer: G,
): Omit<Scene, 'layer'> & { readonly box: Box | undefined } {
  const bench = benchOf(app);
  const { chosen } = bench;
  switch (chosen.kind) {
    case 'all':
      return { box: drawBoard(app, stage, layer), large: undefined, files: [] };
    case 'patterns': {
      const { files, box } = drawPatterns(app, stage, layer, chosen.paths);
      return { box, files, large: undefined };
    }
    case 'piece': {
      const large = bench.board?.articles[chosen.article]?.pieces[chosen.piece]?.shape;
      const box = large === undefined ? undefined : drawLarge(layer, large, bench.rings, true);
      return { box, large, files: [] };
    }
    case 'numbers': {
      const large = numbersShape(app);
      const box = large === undefined ? undefined : drawLarge(layer, large, [], true);
      return { box, large: undefined, files: [] };
    }
  }
}
