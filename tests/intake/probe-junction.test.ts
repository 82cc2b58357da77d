import { describe, expect, it } from 'vitest';
import { EMF, emf, junction, latestOf, MINUTE, probeBench, READINGS } from './probe-support.ts';
import { message, NOW } from './support.ts';

describe('where the temperature of the terminals comes from', () => {
  const probe = { type: 'K', source: EMF };

  it('is the payload before, even while its commit is still waiting', async () => {
    const shop = probeBench(probe);
    const first = shop.intake.accept(message(READINGS, [junction(25)]));
    const second = shop.intake.accept(message(READINGS, [emf(30)], { receivedAt: NOW + 1 }));
    shop.clock.advance(5);
    await Promise.all([first, second]);
    expect(shop.values('forge-1', 'chamber')).toEqual([expect.closeTo(744.862, 3)]);
  });

  it('is the archive after a restart, and for readings that come late', async () => {
    const shop = probeBench(probe);
    const says = (at: number, value: number) => ({
      node: 'forge-1',
      receivedAt: NOW,
      readings: [{ name: 'junction', quantity: 'temperature' as const, at, value, quality: 'good' as const }],
      refusals: [],
    });
    shop.archive.commitIntake([says(NOW - 2 * MINUTE, 40), says(NOW, 25)]);
    await shop.take(message(READINGS, [emf(30), emf(48, 'mV', { t: -100 })]));
    expect(shop.values('forge-1', 'chamber')).toEqual([
      expect.closeTo(1221.29, 3),
      expect.closeTo(744.862, 3),
    ]);
  });

  it('serves for sixty seconds and not for a moment longer', async () => {
    const shop = probeBench(probe);
    await shop.take(message(READINGS, [junction(25)]));
    await shop.take(message(READINGS, [emf(30)], { receivedAt: NOW + MINUTE }));
    await shop.take(message(READINGS, [emf(30)], { receivedAt: NOW + MINUTE + 1 }));
    expect(shop.values('forge-1', 'chamber')).toHaveLength(1);
    expect(shop.values('forge-1', 'tc-emf')).toHaveLength(2);
    expect(shop.refused('forge-1')).toEqual({ 'no-cold-junction': 1 });
  });

  it('is never a bad reading: the emf is kept, no temperature is, and it is counted and explained', async () => {
    const shop = probeBench(probe);
    await shop.take(message(READINGS, [emf(30), junction(5000)]));
    expect(shop.values('forge-1', 'chamber')).toEqual([]);
    expect(shop.values('forge-1', 'tc-emf')).toEqual([0.03]);
    expect(shop.refused('forge-1')).toEqual({ 'no-cold-junction': 1 });
    expect(shop.archive.refusals({ limit: 1 })[0]?.detail).toContain('no good reading of junction');
  });

  it('is the same clock as the emf: from the future, the temperature is too', async () => {
    const shop = probeBench(probe);
    const t = NOW / 1000 + 90;
    await shop.take(message(READINGS, [emf(30, 'mV', { t }), junction(25, { t })]));
    expect(latestOf(shop)).toMatchObject({ quality: 'uncertain', reason: 'future' });
    expect(shop.refused('forge-1')).toEqual({ 'future-timestamp': 1 });
  });

  it('cannot be asked of an archive that does not answer: then nothing is acknowledged', async () => {
    const shop = probeBench(probe);
    shop.archive.close();
    await expect(shop.intake.accept(message(READINGS, [emf(30)]))).rejects.toMatchObject({ code: 'closed' });
    expect(shop.faults).toEqual([]);
  });
});
