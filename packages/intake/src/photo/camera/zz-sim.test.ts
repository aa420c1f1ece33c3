import { test } from 'vitest';
import { writeFileSync, existsSync, mkdirSync, readFileSync } from 'node:fs';
import sharp from '/work/main/packages/intake/node_modules/sharp';
import { loadVision } from '../vision/load-vision.js';
import { newFindings } from '../../findings.js';
import { findReferences } from './find-references.js';
import { solveFloor } from './solve-floor.js';
import { straighten } from '../straight/straighten.js';
import { toFloorPoint } from './places.js';
import { floorErrorWithin } from './floor-error.js';
import { raisedFloor } from './raised-floor.js';
import { tellWithin } from './tell-within.js';
import { INTAKE_SENTENCES } from '../../sentences.js';
test('sim', async () => {
  const m: any = await import('/work/main/tests/camera/index.js');
  const { vision } = await loadVision(); mkdirSync('/tmp/camphotos', { recursive: true });
  const names = (process.env['SCENES'] ?? '').split(',');
  if (process.env['LIST']) console.log(m.BENCH_SCENES.map((s: any) => s.name).join(' '));
  for (const scene of m.BENCH_SCENES.filter((s: any) => names.includes(s.name))) {
    const file = `/tmp/camphotos/${scene.name}.jpg`, tf = `/tmp/camphotos/${scene.name}.json`;
    if (!existsSync(file)) { const r = m.renderScene(scene); writeFileSync(tf, JSON.stringify(r.truth)); writeFileSync(file, await m.encodePhoto(r, 85, '/work/main')); }
    const truth = JSON.parse(readFileSync(tf, 'utf8'));
    const { data, info } = await sharp(readFileSync(file)).removeAlpha().raw().toBuffer({ resolveWithObject: true });
    const photo = { file: scene.name, width: info.width, height: info.height, rgb: new Uint8Array(data) };
    const cpu = () => { const c = process.cpuUsage(); return (c.user + c.system) / 1000; };
    const t = [cpu()]; 
    const refs = findReferences(photo, vision); t.push(cpu());
    const findings = newFindings(scene.name);
    const floor = solveFloor([{ references: refs }], { barsOf: () => scene.sheets.readings }, findings); t.push(cpu());
    const picture = straighten([photo], floor, {}, vision); t.push(cpu());
    let ss = 0, n = 0, worst = 0; const miss: string[] = []; let total = 0, sx=0, sy=0;
    for (const s of truth.sheets) for (const c of s.cornersPx) { total++; const f = refs.markers.find((q) => q.id === (s.sheet - 1) * 4 + c.place); if (!f) { miss.push(`${s.sheet}/${c.place} ${Math.hypot(c.corners[0].x-c.corners[1].x,c.corners[0].y-c.corners[1].y).toFixed(0)}px`); continue; }
      f.corners.forEach((p, i) => { const d = Math.hypot(p.x - c.corners[i].x, p.y - c.corners[i].y); sx+=p.x - c.corners[i].x; sy+=p.y - c.corners[i].y; ss += d * d; n++; worst = Math.max(worst, d); }); }
    // floor check: outline points
    const judge = (fl: typeof floor) => { const ring: any[] = truth.hides[0].outline; const h = truth.hides[0].heightMm; const read = ring.map((p) => toFloorPoint(fl.cameras[0]!, m.project(truth.camera, { ...p, z: h })));
      const area = (r: any[]) => r.reduce((q, p, i) => { const o = r[(i + 1) % r.length]; return q + (p.x * o.y - p.y * o.x) / 2; }, 0);
      const mid = (r: any[]) => ({ x: r.reduce((q, p) => q + p.x, 0) / r.length, y: r.reduce((q, p) => q + p.y, 0) / r.length }); const A = mid(ring), B = mid(read); let dot = 0, cr = 0, sq = 0;
      ring.forEach((p, i) => { const b = read[i]!; dot += (p.x - A.x) * (b.x - B.x) + (p.y - A.y) * (b.y - B.y); cr += (p.x - A.x) * (b.y - B.y) - (p.y - A.y) * (b.x - B.x); sq += (p.x - A.x) ** 2 + (p.y - A.y) ** 2; });
      const L = Math.hypot(dot, cr); let w = 0; ring.forEach((p, i) => { const x = (dot * (p.x - A.x) - cr * (p.y - A.y)) / L + B.x - read[i]!.x, y = (cr * (p.x - A.x) + dot * (p.y - A.y)) / L + B.y - read[i]!.y; w = Math.max(w, Math.hypot(x, y)); });
      const xs = read.map((p) => p.x), ys = read.map((p) => p.y); const box = { minX: Math.min(...xs), minY: Math.min(...ys), maxX: Math.max(...xs), maxY: Math.max(...ys) };
      return { scale: ((L / sq - 1) * 100).toFixed(3) + '%', area: ((area(read) / area(ring) - 1) * 100).toFixed(3) + '%', worstMm: w.toFixed(2), box }; };
    const j = judge(floor), jr = judge(raisedFloor(floor, truth.hides[0].heightMm)); const e = floorErrorWithin(floor, j.box);
    tellWithin(floor, j.box, findings);
    const exact = { ...refs, markers: truth.sheets.flatMap((s: any) => s.cornersPx.map((c: any) => ({ id: (s.sheet - 1) * 4 + c.place, corners: c.corners, sides: [], blurPx: 1, white: .8, black: .1 }))) };
    const fe = solveFloor([{ references: exact }], { barsOf: () => scene.sheets.readings }, newFindings('x'));
    console.log('exact corners', JSON.stringify({ ...judge(raisedFloor(fe, truth.hides[0].heightMm)), box: undefined }), JSON.stringify(fe.unsureness.cameras[0]!.values.slice(8).map(v=>+v.toFixed(4))), JSON.stringify(truth.camera.lens), 'tilt', fe.unsureness.cameras[0]!.tiltDeg, 'height', fe.unsureness.cameras[0]!.heightMm, truth.camera.position.z, 'stretch', JSON.stringify(truth.sheets.map((s: any)=>[s.x|0,s.y|0,s.liftsMm.map((v: number)=>v.toFixed(1)).join('/')])));
    console.log(scene.name, JSON.stringify({ found: `${refs.markers.length}/${total}`, miss, rms: Math.sqrt(ss / n).toFixed(3), mean: [(sx/n).toFixed(3),(sy/n).toFixed(3)], worst: worst.toFixed(2), blur: refs.markers[0]?.blurPx.toFixed(2), res: floor.references.map((r) => r.residualMm.toFixed(2)), k1: floor.cameras[0]!.k1.toFixed(4), trueK1: truth.camera.lens.k1.toFixed(4), flat: {...j,box:undefined}, raised: {...jr,box:undefined}, bound: (e.scaleShare * 100).toFixed(3), boundMm: Math.max(...e.at.map((q) => q.mm)).toFixed(2), ms: t.slice(1).map((v, i) => Math.round(v - t[i]!)), size: [picture.width, picture.height, picture.pxPerMm.toFixed(2)] }));
    for (const d of findings.diagnostics) console.log('   ', d.severity, INTAKE_SENTENCES[d.code]!(d.params as any));
    await sharp(picture.rgb, { raw: { width: picture.width, height: picture.height, channels: 3 } }).resize(1200).png().toFile(`/tmp/camphotos/${scene.name}-straight.png`);
  }
});
