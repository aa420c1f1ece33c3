import { describe, expect, it } from 'vitest';
import { turnedDeg } from './pointers.js';

const finger = (deg: number, far: number) => ({
  x: 100 + far * Math.cos((deg * Math.PI) / 180),
  y: 50 + far * Math.sin((deg * Math.PI) / 180),
});
const thumb = { x: 100, y: 50 };

describe('two fingers on a piece', () => {
  // Plane geometry: y grows downward on a screen, so a growing angle is clockwise.
  it('when one finger goes round the other, the piece turns as far, and clockwise counts as more', () => {
    expect(turnedDeg([thumb, finger(10, 80)], [thumb, finger(35, 80)])).toBeCloseTo(25, 9);
    expect(turnedDeg([thumb, finger(10, 80)], [thumb, finger(-20, 80)])).toBeCloseTo(-30, 9);
  });

  it('when the fingers pass the half turn, the shorter way round counts', () => {
    expect(turnedDeg([thumb, finger(175, 60)], [thumb, finger(-175, 60)])).toBeCloseTo(10, 9);
  });

  it('when they only come nearer or move together, nothing turns', () => {
    expect(turnedDeg([thumb, finger(40, 120)], [thumb, finger(40, 30)])).toBeCloseTo(0, 9);
    const moved = ({ x, y }: { x: number; y: number }) => ({ x: x + 31, y: y - 17 });
    expect(turnedDeg([thumb, finger(40, 90)], [moved(thumb), moved(finger(40, 90))])).toBeCloseTo(0, 9);
  });
});
