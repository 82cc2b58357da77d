import type { z } from 'zod';
import type { AirExposure, AirView } from '../../hub/contract/air.ts';
import { Shape } from '../parts/shape.tsx';
import { airWords, WORK_RATE_WORDS } from '../words/air.ts';
import { number } from '../words/format.ts';
import { bloodScale } from './blood.ts';

type Exposure = z.infer<typeof AirExposure>;

/** What may be in the blood of someone who worked here: an estimate that can only warn earlier. */
export function BloodPart({ view }: { readonly view: AirView }) {
  if (view.exposure.length === 0) return null;
  const { workRate } = view;
  // Settings never hold these two; the contract of the answer names them.
  const rate = workRate === 'rest' || workRate === 'level-0' ? 'heavy' : workRate;
  return (
    <section class="air-part" aria-labelledby="air-blood">
      <h2 id="air-blood">{airWords.bloodTitle}</h2>
      <p class="aside">{airWords.bloodNote}</p>
      {view.exposure.map((one) => (
        <BloodBand key={one.channel} exposure={one} rate={WORK_RATE_WORDS[rate]} />
      ))}
    </section>
  );
}

const WIDTH = 1000;

function BloodBand({ exposure, rate }: { readonly exposure: Exposure; readonly rate: string }) {
  const { label, blood, coverage } = exposure;
  const scale = bloodScale(blood);
  const above = blood.highPercent >= blood.limitPercent;
  const band = airWords.bloodBand(number(blood.lowPercent, 1), number(blood.highPercent, 1));
  const x = (share: number) => share * WIDTH;
  if (coverage === 0) {
    return (
      <div class="air-bars">
        <h3>{label}</h3>
        <p class="air-bar-said">
          <Shape of="blind" /> {airWords.bloodUnknown}. {airWords.bloodUnknownLong}
        </p>
      </div>
    );
  }
  return (
    <div class={`air-bars air-bar-${above ? 'warning' : 'plain'}`}>
      <h3>{label}</h3>
      <p class="air-blood-value value">
        {above && <Shape of="warning" />} {band}
      </p>
      <svg
        class="air-track"
        viewBox={`0 0 ${WIDTH} 40`}
        preserveAspectRatio="none"
        role="img"
        aria-label={band}
      >
        <rect class="air-track-ground" x="0" y="0" width={WIDTH} height="40" />
        <rect
          class="air-track-fill"
          x={x(scale.low)}
          y="0"
          width={Math.max(6, x(scale.high - scale.low))}
          height="40"
        />
        <rect class="air-track-limit" x={x(scale.limit) - 2} y="0" width="5" height="40" />
      </svg>
      <p class="air-blood-scale">
        <span>0 %</span>
        <span style={{ left: `${(100 * scale.limit).toFixed(1)}%` }}>
          {airWords.bloodLimit(number(blood.limitPercent, 1))}
        </span>
      </p>
      <p class="air-peaks">
        {airWords.bloodBetween(rate)}. {airWords.bloodHighest(number(blood.highestPercent, 1))}
      </p>
    </div>
  );
}
