import type { CheckQuestion } from './check.ts';
import { heatedSeconds } from './course.ts';
import type { Fault } from './types.ts';

/** What the furnace, its gas and the day allow. */

export function checkRating({ segments, furnace }: CheckQuestion): Fault[] {
  return segments.flatMap(({ targetCelsius }, segment): Fault[] => {
    const limitCelsius = furnace.ratedCelsius;
    if (targetCelsius <= limitCelsius) return [];
    const params = { targetCelsius, limitCelsius, furnace: furnace.name };
    return [{ code: 'beyond-rating', weight: 'wrong', segment, piece: null, params }];
  });
}

/** Gas and time: hours needed against hours there. */
export function checkGas(question: CheckQuestion): Fault[] {
  const neededSeconds = Math.round(heatedSeconds(question.segments, question.furnace));
  const faults: Fault[] = [];
  const add = (code: Fault['code'], weight: Fault['weight'], params: Fault['params']): void => {
    faults.push({ code, weight, segment: null, piece: null, params: { neededSeconds, ...params } });
  };
  const { gas } = question;
  if (gas === null) add('gas-not-known', 'doubt', {});
  else if (gas !== undefined) {
    const lowSeconds = Math.round(gas.lowHours * 3600);
    const highSeconds = Math.round(gas.highHours * 3600);
    if (highSeconds < neededSeconds) add('gas-will-not-suffice', 'wrong', { lowSeconds, highSeconds });
    else if (lowSeconds < neededSeconds) add('gas-may-not-suffice', 'doubt', { lowSeconds, highSeconds });
  }
  const closing = question.secondsToClosing;
  if (closing !== null && closing < neededSeconds) add('ends-after-closing', 'doubt', { seconds: closing });
  return faults;
}
