import { describe, expect, it } from 'vitest';
import { isLoopback, markAddress, qrDrawing } from '../../../dashboard/pieces/qr.ts';

/** Which modules of the drawing are dark, by "x y". */
function darkOf(path: string): ReadonlySet<string> {
  return new Set([...path.matchAll(/M(\d+) (\d+)h1v1h-1z/g)].map(([, x, y]) => `${x} ${y}`));
}

describe('the code of a label', () => {
  const address = markAddress('http://forge.local:7625', 'HC-07');

  it('holds the page of the mark on this hub', () => {
    expect(address).toBe('http://forge.local:7625/#/pieces/by-mark/HC-07');
  });

  it('has a quiet zone of four modules and its three finder patterns', () => {
    const { size, path } = qrDrawing(address);
    const dark = darkOf(path);
    // ISO/IEC 18004: 17 + 4 × version modules a side, and four light ones all round.
    expect((size - 8 - 17) % 4).toBe(0);
    const isLight = (at: number) => [...dark].every((place) => !place.split(' ').includes(String(at)));
    expect([0, 1, 2, 3].every(isLight)).toBe(true);
    const last = size - 5;
    for (const corner of ['4 4', `${last} 4`, `4 ${last}`]) expect(dark.has(corner)).toBe(true);
    // The fourth corner carries none: no 7-module line of dark ends there.
    const line = [0, 1, 2, 3, 4, 5, 6].map((step) => `${last - step} ${last}`);
    expect(line.every((place) => dark.has(place))).toBe(false);
  });
});

describe('an address that a telephone can follow', () => {
  it('is none of this computer alone', () => {
    expect(['localhost', '127.0.0.1', '[::1]'].every(isLoopback)).toBe(true);
    expect(['forge.local', '192.168.1.20', '10.0.0.127'].some(isLoopback)).toBe(false);
  });
});
