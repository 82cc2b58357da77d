import { describe, expect, it } from 'vitest';
import { magnetSentences } from '../../../dashboard/steel/magnet-words.ts';
import { critical, known, unknown } from './answers.ts';

describe('the magnet answer', () => {
  it('says what magnet plus about 100 °C means for a medium-carbon steel', () => {
    const { verdict, rest } = magnetSentences('1045', critical(), 'Cel');
    expect(verdict).toBe('Magnet plus about 100 °C takes 1045 to about 860 °C, where it is all austenite.');
    expect(rest.join(' ')).toContain('about 100 °C above Ac3');
    expect(rest.join(' ')).toContain('before the Curie point');
  });

  it('says all of it in °F: points with the offset, differences without', () => {
    const { verdict, rest } = magnetSentences('1045', critical(), '[degF]');
    expect(verdict).toContain('about 180 °F');
    expect(verdict).toContain('1580 °F');
    expect(`${verdict} ${rest.join(' ')}`).not.toContain('°C');
  });

  it('puts the gravest remark into the sentence: coarse grain before all austenite', () => {
    const { magnet } = critical();
    const meaning = [...magnet.meaning, { code: 'grain-coarsening', message: 'hot' }];
    const { verdict } = magnetSentences('1020', critical({ magnet: { ...magnet, meaning } }), 'Cel');
    expect(verdict).toContain('grains coarsen');
  });

  it('does not claim transformation where the magnet goes at the Curie point', () => {
    const { magnet } = critical();
    const curie = { ...magnet, lost: known(770), cause: 'curie' as const, proves: 'above-770' as const };
    const text = magnetSentences('1020', critical({ magnet: curie }), 'Cel').rest.join(' ');
    expect(text).toContain('does not prove it all austenite');
    expect(text).not.toContain('has turned to austenite');
  });

  it('tells to leave the magnet alone where nothing is known', () => {
    const none = unknown('Ac1 and Ac3 of this steel are not known');
    const magnet = { lost: none, cause: null, proves: 'nothing' as const, plus: none, meaning: [] };
    const { verdict, rest } = magnetSentences('D2', critical({ magnet }), 'Cel');
    expect(verdict).toBe('Do not judge D2 by a magnet.');
    expect(rest).toEqual(['Ac1 and Ac3 of this steel are not known']);
  });

  it('keeps the words of the hub for a remark that this page does not know', () => {
    const { magnet } = critical();
    const meaning = [{ code: 'something-new', message: 'Something new holds.' }];
    const { rest } = magnetSentences('1045', critical({ magnet: { ...magnet, meaning } }), 'Cel');
    expect(rest).toContain('Something new holds.');
  });
});
