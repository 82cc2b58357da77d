import type { CoolingReadOff } from '../../hub/contract/compute/cooling.ts';
import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import { number, temperature } from '../words/format.ts';
import { coolingWords } from '../words/heat.ts';
import { duration } from '../words/time.ts';
import { aboutTime, coolingRate, timeBand } from './about.ts';
import type { CoolAnswer, CoolingResult } from './ask-cooling.ts';
import type { CoolPlan } from './form.ts';

/** What each way to cool comes to, in a few words. Pure. */

/** From 800 to 500 °C: a time with its band where the way has one. */
export function t85Said({ core, ends }: CoolingResult): string {
  if (core?.t85Seconds === null || core === null) return coolingWords.notPassed;
  const [low, high] = [ends?.fast.t85Seconds ?? null, ends?.slow.t85Seconds ?? null];
  if (low === null || high === null) return aboutTime(core.t85Seconds);
  const band = timeBand(low, high);
  const time = aboutTime(core.t85Seconds, low, high);
  return band === null ? time : `${time} (${band})`;
}

export function rateSaid({ core }: CoolingResult, unit: DisplayUnit): string {
  const rate = core?.rateCelsiusPerHour ?? null;
  return rate === null ? coolingWords.notPassed : coolingRate(rate, unit);
}

/** Whether the rule is kept; where both ends of a way do not agree, that is said. */
export function ruleSaid({ core, ends }: CoolingResult, unit: DisplayUnit): string {
  const rule = core?.rule ?? null;
  if (rule === null) return coolingWords.notThrough;
  const [slow, fast] = [ends?.slow.rule ?? rule, ends?.fast.rule ?? rule];
  const worst = coolingRate(rule.worstCelsiusPerHour, unit);
  if (slow.met !== fast.met) {
    return coolingWords.unsure(
      coolingRate(slow.worstCelsiusPerHour, unit),
      coolingRate(fast.worstCelsiusPerHour, unit),
    );
  }
  if (rule.met) return coolingWords.kept(worst);
  return coolingWords.broken(worst, temperature(rule.worstAtCelsius, unit));
}

/** What burying does, a paragraph a packing; empty for a ball, which the model does not know. */
export function buriedSaid(answer: CoolAnswer, unit: DisplayUnit): string[] {
  return answer.results.flatMap((result) => {
    const { cooling, core, accompanied } = result;
    if (cooling !== 'ash' && cooling !== 'vermiculite') return [];
    const way = coolingWords.long[cooling];
    if (core === null) return [`${way}: ${coolingWords.refused(result.why, result.code)}`];
    const alone = packed(way, core, answer.plan, unit);
    return [[...alone, ...companySaid(accompanied, answer.plan)].join(' ')];
  });
}

function packed(way: string, { rule }: CoolingReadOff, plan: CoolPlan, unit: DisplayUnit): string[] {
  if (rule === null) return [`${way}: ${coolingWords.notThrough}.`];
  const { fromCelsius, toCelsius } = plan.rule;
  const [from, to] = [temperature(fromCelsius, unit), temperature(toCelsius, unit)];
  const least = duration(rule.ruleHours * 3600);
  return [
    coolingWords.buried(way, from, to, aboutTime(rule.hours * 3600), least),
    rule.met
      ? coolingWords.buriedKept
      : coolingWords.buriedBroken(coolingRate(rule.worstCelsiusPerHour, unit)),
  ];
}

function companySaid(read: CoolingReadOff | null, plan: CoolPlan): string[] {
  const rule = read?.rule ?? null;
  if (rule === null) return [];
  const kilograms = `${number(plan.companionKilogramsPerMetre, plan.companionKilogramsPerMetre % 1 === 0 ? 0 : 1)} kg`;
  return [
    coolingWords.accompanied(kilograms, aboutTime(rule.hours * 3600)),
    rule.met ? coolingWords.accompaniedKept : coolingWords.accompaniedBroken,
  ];
}
