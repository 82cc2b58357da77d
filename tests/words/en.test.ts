import { describe, expect, it } from 'vitest';
import { ALARM_KINDS, type Params } from '../../hub/contract/alarm.ts';
import { type FiringEvent, FiringEvent as FiringEventSchema, NEXT_MOVES } from '../../hub/contract/firing.ts';
import { PROBE_FAULTS, TOLERANCE_CLASSES } from '../../hub/contract/probe.ts';
import { COOLING_MEDIA, type DisplayUnit } from '../../hub/contract/schedule.ts';
import { FURNACE_KINDS } from '../../hub/contract/shop.ts';
import { REASON_CODES, UNCERTAINTY_CODES } from '../../hub/contract/words/types.ts';
import { words } from '../../hub/contract/words/words.ts';

const english = words('en');
const UNITS: readonly DisplayUnit[] = ['Cel', '[degF]'];

/** The widest numbers that can really turn up, and nothing at all. */
const FULL: Params = {
  targetCelsius: 1290,
  measuredCelsius: 1301.25,
  limitCelsius: 1300,
  lowCelsius: 1280,
  highCelsius: 1300,
  secondsAhead: 42,
  secondsLeft: 35_880,
  stalledSeconds: 754,
  soakSeconds: 5400,
  plannedSeconds: 7200,
  seconds: 95,
  overCelsius: 1.25,
  rateCelsiusPerHour: -12.5,
  measuredCelsiusPerHour: 1450,
  limitCelsiusPerHour: 28,
  leastCelsiusPerHour: 1450,
  mostCelsiusPerHour: 1450,
  ageSeconds: 133,
  lastCelsius: 845,
  ppm: 61.4,
  limitPpm: 60,
  channels: 0,
  channel: 'channel-1',
  label: 'Over the forge',
  node: 'node-1',
  furnaceName: 'Big forge',
  medium: 'ash',
  faultSeconds: 640,
  othersMovedCelsius: 212.5,
  fromCelsius: 640.25,
  toCelsius: 990.5,
  type: 'K',
  expandedCelsius: 7.45,
  atCelsius: 860,
};

const variants: Params[] = [{}, ...FURNACE_KINDS.map((furnaceKind) => ({ ...FULL, furnaceKind }))];
for (const direction of ['up', 'down'])
  variants.push({ ...FULL, direction }, { ...FULL, direction, secondsLeft: 59 });
for (const fault of PROBE_FAULTS) variants.push({ fault }, { ...FULL, fault });
for (const tolerance of TOLERANCE_CLASSES) variants.push({ ...FULL, tolerance });
variants.push({ ...FULL, stalled: 1 }, { ...FULL, finished: 1, channels: 2, secondsLeft: 1_200_000 });

const schedule = {
  displayUnit: 'Cel' as const,
  segments: [
    { kind: 'ramp' as const, targetCelsius: 800, toleranceCelsius: 10, rateCelsiusPerHour: null },
    { kind: 'soak' as const, targetCelsius: 800, toleranceCelsius: 10, durationSeconds: 600 },
    ...COOLING_MEDIA.map((medium) => ({
      kind: 'cool' as const,
      targetCelsius: 60,
      medium,
      maximumRateCelsiusPerHour: null,
      minimumRateCelsiusPerHour: null,
    })),
  ],
};

const moves = UNITS.flatMap((unit) =>
  NEXT_MOVES.flatMap((code) => variants.map((params) => english.nextMove(code, params, unit))),
);
const reasons = UNITS.flatMap((unit) =>
  REASON_CODES.flatMap((code) => variants.map((params) => english.reason(code, params, unit))),
);
const alarms = UNITS.flatMap((unit) =>
  ALARM_KINDS.flatMap((kind) => variants.map((params) => english.alarm(kind, params, unit))),
);
const uncertainties = UNITS.flatMap((unit) =>
  UNCERTAINTY_CODES.flatMap((code) => variants.map((params) => english.uncertainty(code, params, unit))),
);
const eventKinds = FiringEventSchema.shape.kind.options;
const eventOf = (change: Partial<FiringEvent>) =>
  english.event({ at: 0, kind: 'blind', segment: null, finding: null, params: {}, ...change }, schedule);
const events = [
  ...eventKinds.flatMap((kind) =>
    schedule.segments.map((_, segment) => eventOf({ kind, segment, params: FULL })),
  ),
  ...eventKinds.flatMap((kind) => ALARM_KINDS.map((finding) => eventOf({ kind, finding, params: FULL }))),
  ...['confirmed', 'finished', 'reached'].map((by) =>
    eventOf({ kind: 'segment-ended', segment: 0, params: { by } }),
  ),
];
const all = [
  ...moves,
  ...reasons,
  ...uncertainties,
  ...events,
  ...alarms.flatMap(({ title, message, guidance }) => [title, message, ...guidance]),
];

describe('everything that a person reads', () => {
  it('never calls anything safe, nor offers to silence and carry on', () => {
    expect(all.length).toBeGreaterThan(1000);
    for (const text of all) {
      expect(text).not.toMatch(/\b(un)?safe(ly|ty)?\b/i);
      expect(text).not.toMatch(/silence|ignore|mute|relight|all clear|no danger|harmless/i);
    }
  });

  it('has no holes in it', () => {
    for (const text of all) {
      expect(text).not.toMatch(/undefined|null|NaN|Infinity|\[object|-0 /);
      expect(text.trim()).toBe(text);
      expect(text).not.toBe('');
    }
  });

  it('speaks °F without a trace of °C, and the other way round', () => {
    const spoken = (unit: DisplayUnit) => [
      ...NEXT_MOVES.map((code) => english.nextMove(code, FULL, unit)),
      ...REASON_CODES.map((code) => english.reason(code, FULL, unit)),
      ...ALARM_KINDS.map((kind) => english.alarm(kind, FULL, unit).message),
      ...PROBE_FAULTS.map((fault) => english.alarm('probe-fault', { ...FULL, fault }, unit).message),
      ...UNCERTAINTY_CODES.map((code) => english.uncertainty(code, FULL, unit)),
    ];
    expect(spoken('[degF]').join(' ')).not.toContain('°C');
    expect(spoken('Cel').join(' ')).not.toContain('°F');
    expect(spoken('[degF]').filter((text) => text.includes('°F')).length).toBeGreaterThan(15);
  });
});

describe('the next move', () => {
  it('fits the wall: at most 34 characters', () => {
    for (const text of moves) expect(text.length, text).toBeLessThanOrEqual(34);
  });

  it('speaks the trade', () => {
    const say = (code: (typeof NEXT_MOVES)[number], params: Params) => english.nextMove(code, params, 'Cel');
    expect(say('hold', { secondsLeft: 660 })).toBe('Hold: 11 min to go');
    expect(say('turn-down', { furnaceKind: 'gas-forge' })).toBe('Turn the gas down now');
    expect(say('turn-down', { furnaceKind: 'electric-oven' })).toBe('Turn the oven down now');
    expect(say('cool-bury', {})).toBe('Bury it, lay it straight');
    expect(say('heat-up', { targetCelsius: 860, secondsLeft: 1440 })).toBe('Heat to 860 °C: 24 min to go');
    expect(say('quench-now', {})).toBe('Quench now');
    expect(say('no-reading', {})).toBe('No reading: look at the probe');
  });
});

describe('the alarms about air', () => {
  const air = (kind: 'unsafe-air-first' | 'unsafe-air-second') => english.alarm(kind, FULL, 'Cel');

  it('tell what was measured, against which limit, and where', () => {
    expect(air('unsafe-air-second').title).toBe('Carbon monoxide above the second limit');
    expect(air('unsafe-air-second').message).toBe('61 ppm measured at Over the forge, limit 60 ppm');
  });

  it('say first to leave, gas off only on the way out, then to call, then to stay out', () => {
    const { guidance } = air('unsafe-air-second');
    const order = [
      /out of the building/,
      /on the way out/,
      /emergency services/,
      /stay out/i,
      /doctor/,
      /licensed fitter/,
    ];
    const places = order.map((part) => guidance.findIndex((step) => part.test(step)));
    expect(places).toEqual([0, 1, 2, 3, 4, 5]);
  });

  it('defer to the certified alarm, the local code and a licensed fitter', () => {
    for (const kind of ['unsafe-air-first', 'unsafe-air-second', 'not-watching-air'] as const) {
      const text = english.alarm(kind, {}, 'Cel').guidance.join(' ');
      for (const authority of ['certified CO alarm', 'local code', 'licensed fitter'])
        expect(text).toContain(authority);
    }
  });
});

describe('a probe at fault', () => {
  const say = (fault: string) => english.alarm('probe-fault', { ...FULL, fault }, 'Cel');

  it('is told with what was measured, each fault in its own words', () => {
    expect(say('stuck').title).toBe('Probe stuck: Over the forge');
    expect(say('stuck').message).toBe(
      'Big forge: reads 1301 °C without any change for 10 min while another probe moved by 213 °C',
    );
    expect(say('step').message).toBe(
      'Big forge: from 640 °C to 991 °C between two readings, faster than any probe',
    );
    expect(new Set(PROBE_FAULTS.map((fault) => say(fault).message)).size).toBe(PROBE_FAULTS.length);
    expect(new Set(PROBE_FAULTS.map((fault) => say(fault).guidance.join())).size).toBe(PROBE_FAULTS.length);
  });

  it('always says first not to steer by it', () => {
    for (const fault of [...PROBE_FAULTS, 'unheard-of']) {
      expect(say(fault).guidance[0]).toMatch(/^Do not steer by this probe/);
    }
  });

  it('is named as the cause where there is no reading because of it', () => {
    const message = (params: Params) => english.alarm('not-watching-channel', params, 'Cel').message;
    expect(message({ ...FULL, fault: 'open' })).toBe(
      'Big forge: last good reading 2 min ago (845 °C); the input reads open',
    );
    expect(message(FULL)).toBe('Big forge: last good reading 2 min ago (845 °C)');
  });
});

describe('the ± of a channel', () => {
  const say = (code: (typeof UNCERTAINTY_CODES)[number], params: Params = {}) =>
    english.uncertainty(code, { ...FULL, tolerance: 'iec-2', ...params }, 'Cel');

  it('says that a class is for new wire', () => {
    expect(say('by-class')).toMatch(
      /^± 7\.5 °C at 860 °C \(k = 2\), from IEC 60584-1 class 2 of type K\. That class is for new wire/,
    );
    expect(say('by-correction')).toContain('drifted since then is not in it');
  });

  it('says why there is none, and then tells no number', () => {
    for (const code of ['no-probe', 'no-class', 'beyond-class'] as const) {
      expect(say(code)).toContain('no ± to tell');
      expect(say(code)).not.toContain('7.4');
    }
  });
});

describe('the other alarms', () => {
  it('give every kind something to check and do', () => {
    for (const { guidance } of alarms) expect(guidance.length).toBeGreaterThanOrEqual(2);
  });

  it('say the numbers', () => {
    const message = (kind: (typeof ALARM_KINDS)[number]) => english.alarm(kind, FULL, 'Cel').message;
    expect(message('overshoot')).toBe('Big forge: 1301 °C, 1.3 °C above the upper limit of 1300 °C');
    expect(message('overshoot-ahead')).toBe('Big forge: 1301 °C, at this rate past 1300 °C in 42 s');
    expect(message('not-watching-channel')).toBe('Big forge: last good reading 2 min ago (845 °C)');
    expect(message('not-watching-air')).toBe('Big forge is at work and no carbon monoxide channel is set up');
  });

  it('talk of gas to a forge and of the set point to an oven', () => {
    const steps = (furnaceKind: string) =>
      english.alarm('soak-stalled', { furnaceKind }, 'Cel').guidance.join(' ');
    expect(steps('gas-forge')).toContain('gas pressure');
    expect(steps('electric-oven')).not.toContain('gas');
  });
});
