import { describe, expect, it } from 'vitest';
import {
  along,
  flowText,
  hoursText,
  kilowattText,
  massText,
  pressureText,
} from '../../../dashboard/gas/figures.ts';
import { checkFurnace, furnaceTexts } from '../../../dashboard/setup/furnace-form.ts';
import { Furnace } from '../../../hub/contract/shop.ts';

const METRIC = { displayUnit: 'Cel', pressureUnit: 'bar', massUnit: 'kg' } as const;
const TRADE = { displayUnit: '[degF]', pressureUnit: '[psi]', massUnit: '[lb_av]' } as const;
const FLOW = { low: 0.9, value: 1.059, high: 1.218 };

describe('figures of the gas page', () => {
  it('are in the units of the shop', () => {
    expect(pressureText(103_421, METRIC)).toBe('1.03 bar');
    expect(pressureText(103_421, TRADE)).toBe('15.0 psi');
    expect(massText(9.07, TRADE)).toBe('20.0 lb');
    expect(flowText(FLOW, METRIC)).toBe('0.90 to 1.22 kg/h');
    expect(flowText(FLOW, TRADE)).toBe('1.98 to 2.69 lb/h');
  });

  it('say unknown where nobody knows, and nothing where nothing flows', () => {
    expect([pressureText(null, METRIC), flowText(null, METRIC), kilowattText(null)]).toEqual([
      'unknown',
      'unknown',
      'unknown',
    ]);
    expect(flowText({ low: 0, value: 0, high: 0 }, METRIC)).toBe('0 kg/h');
  });

  it('round hours to what the range deserves', () => {
    expect(hoursText(7.78)).toBe('7 h 45 min');
    expect(hoursText(0.5)).toBe('30 min');
    expect(hoursText(13.2)).toBe('13 h');
    expect(hoursText(200)).toBe('more than 4 days');
    expect([along(5, 10), along(20, 10), along(1, 0)]).toEqual([50, 100, 0]);
  });
});

describe('the burner in the set-up', () => {
  const texts = { ...furnaceTexts(null, 'Cel'), name: 'Forge', rated: '1300' };

  it('is typed in the unit of the shop and kept in pascals', () => {
    const burner = { ...texts.burner, bore: '0,889', low: '2', high: '20' };
    const { value } = checkFurnace({ ...texts, burner }, 'Cel', '[psi]');
    // 1 psi = 6894.757 Pa.
    expect(value?.gas).toMatchObject({ boreMm: 0.889, dischargeCoefficient: 0.85, lowPascals: 13_789.5 });
    const furnace = Furnace.parse({ ...value, id: 'a', archived: false, createdAt: 0 });
    expect(furnaceTexts(furnace, 'Cel', '[psi]').burner).toMatchObject({ low: '2', high: '20' });
  });

  it('is none without a bore, and none in an oven', () => {
    expect(checkFurnace(texts, 'Cel').value?.gas).toBeNull();
    const burner = { ...texts.burner, bore: '1' };
    expect(checkFurnace({ ...texts, kind: 'electric-oven', burner }, 'Cel').value?.gas).toBeNull();
  });

  it('says beside the field what cannot be', () => {
    const burner = { ...texts.burner, bore: '40', low: '2', high: '1' };
    const { faults } = checkFurnace({ ...texts, burner }, 'Cel');
    expect(Object.keys(faults)).toContain('gas.boreMm');
    const band = { ...texts.burner, bore: '1', low: '2', high: '1' };
    expect(Object.keys(checkFurnace({ ...texts, burner: band }, 'Cel').faults)).toEqual(['gas.highPascals']);
  });
});
