import { describe, expect, it } from 'vitest';
import { airWords, LIMIT_WORDS, PROFILE_WORDS } from '../../../dashboard/words/air.ts';
import { airSetupWords } from '../../../dashboard/words/air-setup.ts';
import { ventilationWords } from '../../../dashboard/words/air-ventilation.ts';

/** Every text of a table of words; a function is called with stand-ins. */
function texts(table: object): string[] {
  return Object.values(table).flatMap((entry: unknown) => {
    if (typeof entry === 'string') return [entry];
    if (typeof entry === 'function') return [String(Reflect.apply(entry, null, ['A', 'B', 'C']))];
    return typeof entry === 'object' && entry !== null ? texts(entry) : [];
  });
}

const ALL = [airWords, LIMIT_WORDS, PROFILE_WORDS, ventilationWords, airSetupWords].flatMap(texts);

describe('the words about the air', () => {
  it('never call it safe, good, fine, clean, clear, normal or in order', () => {
    const soothing = /\b(safe|safely|good|fine|ok|okay|clean|clear|normal|harmless|healthy|in order)\b/i;
    expect(ALL.filter((text) => soothing.test(text))).toEqual([]);
    expect(ALL.length).toBeGreaterThan(100);
  });

  it('speak of freedom from danger only to deny it', () => {
    for (const text of ALL.filter((one) => one.includes('free of danger'))) {
      expect(text).toMatch(/\b(never|no)\b/i);
    }
  });

  it('carry the caution: an aid, never a certified alarm, the local code first', () => {
    expect(airWords.caution).toMatch(/aid.*never a certified CO alarm.*local code/s);
    expect(airWords.bloodNote).toContain('typical adult');
    expect(airWords.bloodNote).toContain('Not a medical statement');
  });
});
