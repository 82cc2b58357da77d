import type { Params } from '../contract/alarm.ts';
import type { FiringDetail } from '../contract/firing.ts';
import type { ChannelUncertainty, Probe } from '../contract/probe.ts';
import type { DisplayUnit, Schedule } from '../contract/schedule.ts';
import type { Channel } from '../contract/shop.ts';
import type { UncertaintyCode } from '../contract/words/types.ts';
import { words } from '../contract/words/words.ts';
import { PhysicsError } from '../physics/errors.ts';
import {
  type ChannelFacts,
  type CombinedUncertainty,
  channelUncertainty,
} from '../physics/probe-uncertainty.ts';

/**
 * Where the terminals are taken to be: how warm they are changes nothing while no error of theirs is in the budget.
 * Common practice, no source.
 */
const TERMINALS_CELSIUS = 25;

/** The ± of each watched channel at the temperature that mattered most, as its probe is set up now. */
export function recordUncertainty(
  firing: Pick<FiringDetail, 'schedule' | 'watchedChannels'>,
  channels: readonly Channel[],
  unit: DisplayUnit,
): ChannelUncertainty[] {
  const atCelsius = judgedCelsius(firing.schedule);
  return channels
    .filter(({ id }) => firing.watchedChannels.includes(id))
    .map(({ id, probe }) => uncertaintyOf(id, probe, atCelsius, unit));
}

/** The highest soak target; without a soak, the highest target. */
function judgedCelsius({ segments }: Schedule): number {
  const soaks = segments.filter(({ kind }) => kind === 'soak');
  return Math.max(...(soaks.length > 0 ? soaks : segments).map(({ targetCelsius }) => targetCelsius));
}

function uncertaintyOf(
  channel: string,
  probe: Probe | null,
  atCelsius: number,
  unit: DisplayUnit,
): ChannelUncertainty {
  const { code, found } = budgetOf(probe, atCelsius);
  const params: Params = {
    atCelsius,
    type: probe?.type ?? null,
    tolerance: probe?.tolerance ?? null,
    expandedCelsius: found?.expandedCelsius ?? null,
  };
  return {
    channel,
    atCelsius,
    expandedCelsius: found?.expandedCelsius ?? null,
    coverageFactor: found?.coverageFactor ?? null,
    budget: [...(found?.budget ?? [])],
    text: words('en').uncertainty(code, params, unit),
  };
}

interface Budget {
  readonly code: UncertaintyCode;
  readonly found: CombinedUncertainty | null;
}

/**
 * A correction replaces the class: it says what this very wire does. With neither, a digitiser's step alone would
 * read as a fine ± for a wire of which nothing is known; so there is none.
 */
function budgetOf(probe: Probe | null, hotCelsius: number): Budget {
  if (probe === null) return { code: 'no-probe', found: null };
  const { type, tolerance, correction, digitiserStepCelsius } = probe;
  if (correction === null && tolerance === null) return { code: 'no-class', found: null };
  const wire = wireFacts(tolerance, correction);
  const step = digitiserStepCelsius === null ? {} : { digitiserStep: { celsius: digitiserStepCelsius } };
  try {
    const found = channelUncertainty({
      type,
      hotCelsius,
      coldJunctionCelsius: TERMINALS_CELSIUS,
      ...wire,
      ...step,
    });
    return { code: correction === null ? 'by-class' : 'by-correction', found };
  } catch (fault) {
    if (fault instanceof PhysicsError)
      return { code: correction === null ? 'beyond-class' : 'beyond-type', found: null };
    throw fault;
  }
}

function wireFacts(
  toleranceClass: Probe['tolerance'],
  correction: Probe['correction'],
): Pick<ChannelFacts, 'correctionStandardCelsius' | 'toleranceClass'> {
  if (correction !== null) return { correctionStandardCelsius: correction.standardUncertaintyCelsius };
  return toleranceClass === null ? {} : { toleranceClass };
}
