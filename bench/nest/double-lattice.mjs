// The densest double lattice of a convex piece, computed apart from the engine: it is the measure, not the method.
// Kuperberg & Kuperberg 1990: for a direction, take the two chords of half the longest chord's length; the
// parallelogram that they span has area p, and a double lattice has one piece per 2p. The densest has the least p.

/** Directions looked at in a half turn; each promising valley is then narrowed down. */
const DIRECTIONS = 2880;
const VALLEYS = 24;
const NARROWINGS = 60;
const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** Area of the convex ring over 2p. */
export function doubleLatticeDensity(ring) {
  const step = Math.PI / DIRECTIONS;
  const samples = Array.from({ length: DIRECTIONS }, (_, i) => halfLengthArea(ring, i * step));
  const valleys = samples
    .map((value, i) => ({ value, i }))
    .filter(({ value, i }) => value <= samples.at(i - 1) && value <= samples[(i + 1) % DIRECTIONS])
    .sort((a, b) => a.value - b.value || a.i - b.i)
    .slice(0, VALLEYS);
  const least = Math.min(...valleys.map(({ i }) => narrowed(ring, (i - 1) * step, (i + 1) * step)));
  return areaOf(ring) / (2 * least);
}

function narrowed(ring, from, to) {
  let [a, b] = [from, to];
  for (let i = 0; i < NARROWINGS; i++) {
    const c = b - GOLDEN * (b - a);
    const d = a + GOLDEN * (b - a);
    if (halfLengthArea(ring, c) <= halfLengthArea(ring, d)) b = d;
    else a = c;
  }
  return halfLengthArea(ring, (a + b) / 2);
}

/** p: half the longest chord in a direction, times the distance of the two chords of that length. */
function halfLengthArea(ring, direction) {
  const [c, s] = [Math.cos(direction), Math.sin(direction)];
  const turned = ring.map(({ x, y }) => ({ u: x * c + y * s, v: y * c - x * s }));
  const levels = [...new Set(turned.map(({ v }) => v))].sort((a, b) => a - b);
  const chords = levels.map((level, i) => {
    // At an end the chord may be an edge, which a level just inside has too.
    if (i === 0 || i === levels.length - 1) return endChord(turned, level);
    return chordLength(turned, level);
  });
  const longest = Math.max(...chords);
  const half = longest / 2;
  const top = chords.indexOf(longest);
  const low = crossing(levels, chords, half, 0, top);
  const high = crossing([...levels].reverse(), [...chords].reverse(), half, 0, levels.length - 1 - top);
  return half * (high - low);
}

/** The first level, from the start, at which the chord (straight between levels) has the length. */
function crossing(levels, chords, length, from, to) {
  if (chords[from] >= length) return levels[from];
  for (let i = from; i < to; i++) {
    if (chords[i + 1] < length) continue;
    const t = (length - chords[i]) / (chords[i + 1] - chords[i]);
    return levels[i] + t * (levels[i + 1] - levels[i]);
  }
  return levels[to];
}

function endChord(turned, level) {
  const us = turned.filter(({ v }) => v === level).map(({ u }) => u);
  return Math.max(...us) - Math.min(...us);
}

function chordLength(turned, level) {
  let [least, most] = [Infinity, -Infinity];
  turned.forEach((p, i) => {
    const q = turned[(i + 1) % turned.length];
    if ((level - p.v) * (level - q.v) > 0) return;
    const u = p.v === q.v ? p.u : p.u + ((level - p.v) / (q.v - p.v)) * (q.u - p.u);
    least = Math.min(least, u);
    most = Math.max(most, u);
  });
  return most - least;
}

function areaOf(ring) {
  let twice = 0;
  ring.forEach((p, i) => {
    const q = ring[(i + 1) % ring.length];
    twice += p.x * q.y - q.x * p.y;
  });
  return Math.abs(twice) / 2;
}
