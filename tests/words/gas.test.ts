import { describe, expect, it } from 'vitest';
import { ALARM_KINDS } from '../../hub/contract/alarm.ts';
import { GAS_CAUTION, GAS_NOTICES } from '../../hub/contract/words/en-gas.ts';
import { words } from '../../hub/contract/words/words.ts';

const KINDS = ALARM_KINDS.filter((kind) => kind.startsWith('gas-'));
const english = words('en');
const stepsOf = (kind: (typeof KINDS)[number]): string[] => english.alarm(kind, {}, 'Cel').guidance;

describe('what is said of gas', () => {
  it('never says to relight, and never that gas is safe', () => {
    const said = [...KINDS.flatMap(stepsOf), ...KINDS.map((kind) => JSON.stringify(english.rationale(kind)))];
    for (const text of said) expect(text).not.toMatch(/relight|light (it )?again|is safe|all clear/i);
    expect(GAS_NOTICES[0]).toContain('Nothing here says that gas is safe');
  });

  it.each([
    'gas-flame-out',
    'gas-escaping',
    'gas-on-cold',
    'gas-empty',
    'gas-valve-shut',
    'gas-lost',
  ] as const)('closes the gas first (%s)', (kind) => {
    expect(stepsOf(kind)[0]).toMatch(/^Close the gas/);
  });

  it('defers to certified alarms, the code and a competent fitter, each time and last', () => {
    for (const kind of KINDS) expect(stepsOf(kind).at(-1)).toMatch(/certified.*local code.*competent fitter/);
    expect(GAS_CAUTION).toMatch(/[Cc]ertified gas and CO alarms.*competent fitter.*local code/);
  });

  it('tells pressures in bar and psi', () => {
    const params = { outletPascals: 100_000, lowPascals: 14_000, highPascals: 90_000, furnaceName: 'Forge' };
    const { message, title } = english.alarm('gas-off-band', params, 'Cel');
    expect(message).toBe('Forge: 1.00 bar (14.5 psi), band 0.14 bar (2.0 psi) to 0.90 bar (13.1 psi)');
    expect(title).toBe('Gas pressure too high for this furnace');
  });
});
