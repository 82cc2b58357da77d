import { beforeEach, describe, expect, it } from 'vitest';
import { type ComputeApi, createComputeApi } from '../../../dashboard/api/compute-client.ts';
import { createSend } from '../../../dashboard/api/request.ts';
import { askHeat, type HeatAnswer } from '../../../dashboard/heat/ask.ts';
import { askCooling } from '../../../dashboard/heat/ask-cooling.ts';
import { buriedSaid, ruleSaid } from '../../../dashboard/heat/cooling-said.ts';
import { type HeatTexts, readCool, readHeat, startTexts } from '../../../dashboard/heat/form.ts';
import { heatOf } from '../../../dashboard/heat/furnace.ts';
import { growth, ownArrival } from '../../../dashboard/heat/heating-picture.ts';
import { fieldOfRefusal, packingRefusals } from '../../../dashboard/heat/refusal.ts';
import { growthSaid, saidOf } from '../../../dashboard/heat/said.ts';
import { type Api, makeApi } from '../../web/api-client.ts';

let hub: Api;
let compute: ComputeApi;
let asked: string[];

beforeEach(() => {
  hub = makeApi();
  asked = [];
  const { send } = createSend(async (address, init) => {
    asked.push(address.replace('/api/v1/compute/', ''));
    const { status, type, body } = await hub.call('POST', address, String(init.body));
    return new Response(JSON.stringify(body), { status, headers: { 'content-type': type } });
  }, '');
  compute = createComputeApi(send);
});

const SALT = heatOf({ kind: 'salt-bath', fit: null });
const FORGE = heatOf({ kind: 'gas-forge', fit: null });

function heat(more: Partial<HeatTexts>, furnace = FORGE, isWanted = () => true): Promise<HeatAnswer> {
  const { plan } = readHeat({ ...startTexts('Cel', 'kind:gas-forge'), ...more });
  if (plan === null) throw new Error('the test asks what cannot be read');
  return askHeat(compute, plan, furnace, isWanted);
}

function cool(more: Partial<HeatTexts>) {
  const { plan } = readCool({ ...startTexts('Cel', 'kind:gas-forge'), ...more });
  if (plan === null) throw new Error('the test asks what cannot be read');
  return askCooling(compute, plan, () => true);
}

describe('the heat page and the hub', () => {
  it('says when the core arrives, within the band of the furnace, and the thicker the later', async () => {
    const answer = await heat({});
    const arrival = ownArrival(answer);
    expect(arrival?.low).toBeLessThan(arrival?.usual ?? 0);
    expect(arrival?.high ?? 0).toBeGreaterThan(arrival?.usual ?? Number.POSITIVE_INFINITY);
    expect(answer.usual.map(({ thicknessMm }) => thicknessMm)).toEqual([12.5, 18.75, 25, 37.5, 50]);
    const times = answer.usual.map(({ seconds }) => seconds ?? Number.NaN);
    expect(times).toEqual([...times].sort((a, b) => a - b));
    expect(answer.conduction.curves.seconds.at(-1)).toBeGreaterThan(arrival?.high ?? 0);
  });

  it('finds the skin at fault for a thin bar in a forge, and the steel for a thick one in salt', async () => {
    // Bi = h R / k of 0.03: a lumped body, whose time goes with its section.
    const thin = await heat({ thickness: '10' });
    expect(growth(thin)?.times).toBeCloseTo(2, 1);
    expect(growthSaid(thin)).toContain('into the skin');
    // A bar of 400 mm and one of 800 in salt: h = 600, k = 27.3 (EN 1993-1-2 above 800 °C), so Bi = 4.40 and 8.79.
    // First term of the series (from memory: Incropera, table 5.1, between its rows): zeta 1.941 and 2.149, C 1.483
    // and 1.559; to 10 of 830 K: 4 (1.941 / 2.149)² ln(1.559 · 83) / ln(1.483 · 83) = 3.30.
    const thick = await heat({ thickness: '400' }, SALT);
    expect(growth(thick)?.times).toBeCloseTo(3.3, 1);
    expect(growthSaid(thick)).toContain('through the steel');
  });

  it('counts a plate heated from one face as twice its thickness, as symmetry demands', async () => {
    const both = await heat({ shape: 'plate', thickness: '20' }, SALT);
    const double = both.usual.find(({ thicknessMm }) => thicknessMm === 40)?.seconds ?? 0;
    const alone = ownArrival(await heat({ shape: 'plate', thickness: '40' }, SALT))?.usual;
    expect(alone).toBeCloseTo(double, 6);
  });

  it('says that a core never comes to where the furnace does not stand', async () => {
    const answer = await heat({ chamber: '800' });
    expect(ownArrival(answer)).toBeNull();
    expect(saidOf(answer, 'Cel', 'gas-forge').headline).toContain('never');
    expect(answer.usual).toEqual([]);
    expect(answer.conduction.curves.coreCelsius.at(-1)).toBeCloseTo(800, 0);
  });

  it('follows a furnace that is lit cold: the piece cannot be there before it', async () => {
    const answer = await heat({ lit: 'cold', rate: '400', thickness: '50' });
    // 20 to 840 °C at 400 °C/h.
    expect(ownArrival(answer)?.low).toBeGreaterThan((820 / 400) * 3600);
    expect(answer.usual).toHaveLength(5);
  });

  it('does not go on asking once the answer is no longer wanted', async () => {
    let wanted = true;
    await heat({ lit: 'cold' }, FORGE, () => {
      const was = wanted;
      wanted = false;
      return was;
    });
    expect(asked.filter((name) => name === 'soak-time').length).toBeLessThanOrEqual(2);
  });

  it.each([
    [{ thickness: '2500' }, 'thickness'],
    [{ tolerance: '0' }, 'tolerance'],
    [{ chamber: '1900' }, 'chamber'],
    [{ start: '1900' }, 'start'],
    [{ hold: '300 h' }, 'hold'],
  ] as const)('puts the refusal of %j beside its field', async (more, field) => {
    const refused = await heat(more).catch((error: unknown) => error);
    expect(fieldOfRefusal(refused)).toBe(field);
  });

  it('puts beside no field what is about none', () => {
    expect(fieldOfRefusal(new Error('section is lost'))).toBeNull();
    expect(fieldOfRefusal(null)).toBeNull();
  });
});

describe('the cooling half of the heat page and the hub', () => {
  it('asks every way, fast to slow, and each is slower than the one before', async () => {
    const { results } = await cool({});
    const rates = results.map(({ core }) => core?.rateCelsiusPerHour ?? Number.NaN);
    expect(results).toHaveLength(6);
    expect(rates.slice(0, 3)).toEqual([...rates.slice(0, 3)].sort((a, b) => b - a));
    expect(Math.min(...rates.slice(0, 3))).toBeGreaterThan(Math.max(...rates.slice(3)));
  });

  it('tells a thin bar in ash that the rule of an anneal is far from kept', async () => {
    const answer = await cool({ shape: 'plate', thickness: '6', width: '40' });
    const ash = answer.results.find(({ cooling }) => cooling === 'ash');
    expect(ash?.core?.rule?.met).toBe(false);
    // 180 °C at 28 °C/h are 6 h 26 min: arithmetic of the rule itself.
    expect(buriedSaid(answer, 'Cel').join()).toContain('6 h 26 min');
    expect(ash?.accompanied?.rule?.hours).toBeGreaterThan(ash?.core?.rule?.hours ?? 0);
    expect(ash && ruleSaid(ash, 'Cel')).toContain('too fast');
  });

  it('keeps a rule that is slow to break', async () => {
    const { results } = await cool({ ruleMost: '200', ruleFrom: '800' });
    const furnace = results.find(({ cooling }) => cooling === 'closed-furnace');
    expect(furnace && ruleSaid(furnace, 'Cel')).toContain('kept');
  });

  it('has no answer for a ball in ash, and says beside the field that the can is too narrow', async () => {
    const ball = await cool({ shape: 'sphere' });
    expect(ball.results.map(({ cooling }) => cooling)).not.toContain('ash');
    const { results } = await cool({ thickness: '200' });
    expect(packingRefusals(results).canRadius).toContain('wider can');
    expect(packingRefusals((await cool({})).results)).toEqual({});
  });

  it('answers the other ways though one is refused', async () => {
    const { results } = await cool({ coolFrom: '1000' });
    const furnace = results.find(({ cooling }) => cooling === 'closed-furnace');
    expect(furnace).toMatchObject({ core: null, code: 'out-of-range' });
    expect(results.filter(({ core }) => core !== null)).toHaveLength(5);
  });
});
