import { expect, test } from 'vitest';
import { ROOM_CUBIC_METRES, Room } from '../../../sensors-sim/plant/room.ts';

test('carbon monoxide settles at background plus source over air flow', () => {
  const room = new Room();
  const carbonMonoxideKilogramsPerSecond = 3e-6;
  for (let second = 0; second < 4 * 3600; second += 1) {
    room.step({ airChangesPerHour: 6, carbonMonoxideKilogramsPerSecond }, 1);
  }
  // 3e-6 kg/s at 1.1645 kg/m³ (28.01 g/mol over 24.055 l/mol at 20 °C) is 0.009274 m³/h, into 360 m³/h.
  expect(room.coPpm).toBeCloseTo(0.5 + (1e6 * ((3e-6 / 1.1645) * 3600)) / (6 * ROOM_CUBIC_METRES), 4);
});

test('without a source the room clears to the outdoor background by the air-change table', () => {
  const room = new Room();
  room.coPpm = 100.5;
  // SOURCE: CDC MMWR 43 (RR-13) 1994: 99 % removed in 46 min at 6 air changes an hour.
  room.step({ airChangesPerHour: 6, carbonMonoxideKilogramsPerSecond: 0 }, 46 * 60);
  expect(room.coPpm - 0.5).toBeCloseTo(1, 1);
});
