/**
 * Thins areas to lines one pixel wide that hang together as they did (T. Y. Zhang and C. Y. Suen, Communications of the
 * ACM 27, 1984; from memory). 1 is set; the outermost rows and columns must be 0.
 */
export function thin(mask: Uint8Array, width: number): Uint8Array {
  const now = new Uint8Array(mask);
  const around = [-width, -width + 1, 1, width + 1, width, width - 1, -1, -width - 1];
  let set: number[] = [];
  now.forEach((value, i) => {
    if (value === 1) set.push(i);
  });
  for (let isChanged = true; isChanged;) {
    isChanged = false;
    for (const pass of [0, 1]) {
      const gone = set.filter((i) => goes(now, i, around, pass));
      for (const i of gone) now[i] = 0;
      if (gone.length > 0) {
        isChanged = true;
        set = set.filter((i) => now[i] === 1);
      }
    }
  }
  return now;
}

function goes(now: Uint8Array, i: number, around: readonly number[], pass: number): boolean {
  const p = around.map((d) => now[i + d]!);
  const count = p.reduce((sum, value) => sum + value, 0);
  if (count < 2 || count > 6) return false;
  let starts = 0;
  for (let k = 0; k < 8; k++) if (p[k] === 0 && p[(k + 1) % 8] === 1) starts++;
  if (starts !== 1) return false;
  const [north, east, south, west] = [p[0]!, p[2]!, p[4]!, p[6]!];
  return pass === 0
    ? north * east * south === 0 && east * south * west === 0
    : north * east * west === 0 && north * south * west === 0;
}
