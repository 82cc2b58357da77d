import type { z } from 'zod';
import type { AirExposure, AirView } from '../../hub/contract/air.ts';
import type { KnownMean, LimitReading } from '../../hub/contract/compute/exposure.ts';
import { Shape } from '../parts/shape.tsx';
import { airWords, LIMIT_WORDS } from '../words/air.ts';
import { number } from '../words/format.ts';
import { since } from '../words/time.ts';
import { barOf, LIMIT_SHARE, meanOf, percentOf, ppmText } from './bars.ts';

type Exposure = z.infer<typeof AirExposure>;

/** Exposure of each sensor's place against the limits that the shop has chosen. */
export function ExposurePart({ view }: { readonly view: AirView }) {
  const { shift, countedFrom, convention, exposure, now } = view;
  const from = since(shift?.from ?? countedFrom, now);
  return (
    <section class="air-part" aria-labelledby="air-exposure">
      <h2 id="air-exposure">{airWords.exposureTitle}</h2>
      <p class="air-lead">{shift === null ? airWords.restSince(from) : airWords.shiftSince(from)}</p>
      {exposure.length === 0 && <p>{airWords.noExposure}</p>}
      {exposure.map((one) => (
        <SensorBars key={one.channel} exposure={one} now={now} />
      ))}
      <Key />
      <p class="aside">
        {convention.kind === 'sum-over'
          ? airWords.sumOver(number(convention.hours))
          : airWords.meanOfShift(number(convention.leastHours), number(convention.mostHours))}
      </p>
    </section>
  );
}

function SensorBars({ exposure, now }: { readonly exposure: Exposure; readonly now: number }) {
  const { label, coverage, peak, highestStel, limits, doseShare } = exposure;
  return (
    <div class="air-bars">
      <h3>
        {label}{' '}
        <small class={coverage < 1 ? 'air-cover air-cover-part' : 'air-cover'}>{covered(coverage)}</small>
      </h3>
      {limits.map((reading) => (
        <Bar key={reading.kind} reading={reading} mean={meanOf(reading.kind, exposure)} />
      ))}
      <Dose share={doseShare} known={coverage > 0} />
      <p class="air-peaks">
        {peak === null ? airWords.noPeak : airWords.peak(ppmText(peak.ppm), since(peak.at, now))}{' '}
        {highestStel !== null && airWords.worstShort(ppmText(highestStel.ppm))}
      </p>
    </div>
  );
}

function covered(coverage: number): string {
  return coverage === 0 ? airWords.allUnknown : airWords.coverage(percentOf(coverage));
}

interface BarProps {
  readonly reading: LimitReading;
  readonly mean: KnownMean | null;
}

function Bar({ reading, mean }: BarProps) {
  const { kind, standing, minutesAbove } = reading;
  const bar = barOf(reading, mean);
  const { name, long } = LIMIT_WORDS[kind];
  const said = saidOf(reading);
  const notes = [
    ...(mean !== null && bar.unknown ? [airWords.atLeast(ppmText(mean.atLeastPpm))] : []),
    ...(mean !== null && mean.coverage < 0.995 ? [covered(mean.coverage)] : []),
    ...(minutesAbove > 0 ? [airWords.minutesAbove(minutesText(minutesAbove))] : []),
  ];
  return (
    <div class={`air-bar air-bar-${toneOf(reading)}`}>
      <p class="air-bar-name">
        {name} <small>{long}</small>
      </p>
      <Track bar={bar} label={airWords.barSaid(name, said, airWords.standing[standing])} />
      <p class="air-bar-said value">
        {standing === 'above' && (
          <>
            <Shape of={kind === 'twa' ? 'warning' : 'danger'} /> {airWords.above}{' '}
          </>
        )}
        {bar.unknown && <Shape of="blind" />} {said}
      </p>
      {notes.length > 0 && <p class="air-bar-notes">{notes.join(' · ')}</p>}
    </div>
  );
}

/** A level that nobody measures any more is told as the last one, not as that of now. */
function saidOf({ ppm, limit, standing }: LimitReading): string {
  const most = number(limit.ppm);
  if (ppm === null) return airWords.unknownOf(most);
  return standing === 'unknown'
    ? airWords.unknownLast(ppmText(ppm), most)
    : airWords.ofLimit(ppmText(ppm), most);
}

function toneOf({ kind, standing }: LimitReading): string {
  if (standing !== 'above') return standing === 'unknown' ? 'unknown' : 'plain';
  return kind === 'twa' ? 'warning' : 'danger';
}

function minutesText(minutes: number): string {
  return minutes < 1 ? '<1' : number(minutes);
}

const WIDTH = 1000;

function Track({ bar, label }: { readonly bar: ReturnType<typeof barOf>; readonly label: string }) {
  const measured = bar.measured * WIDTH;
  const held = bar.held * WIDTH;
  return (
    <svg
      class="air-track"
      viewBox={`0 0 ${WIDTH} 40`}
      preserveAspectRatio="none"
      role="img"
      aria-label={label}
    >
      <Hatch />
      <rect class="air-track-ground" x="0" y="0" width={WIDTH} height="40" />
      {bar.unknown && (
        <rect class="air-track-hatch" x={measured} y="0" width={WIDTH - measured} height="40" />
      )}
      {!bar.unknown && held > measured && (
        <rect class="air-track-hatch" x={measured} y="0" width={held - measured} height="40" />
      )}
      <rect class="air-track-fill" x="0" y="0" width={measured} height="40" />
      <rect class="air-track-limit" x={LIMIT_SHARE * WIDTH - 2} y="0" width="5" height="40" />
    </svg>
  );
}

/** One definition a drawing: a pattern in a hidden drawing would not be painted. */
function Hatch() {
  return (
    <defs>
      <pattern
        id="air-hatch"
        width="14"
        height="14"
        patternUnits="userSpaceOnUse"
        patternTransform="rotate(45)"
      >
        <rect class="air-hatch-line" width="5" height="14" />
      </pattern>
    </defs>
  );
}

function Dose({ share, known }: { readonly share: number; readonly known: boolean }) {
  const said = known ? airWords.dose(percentOf(share)) : airWords.bloodUnknown;
  const bar = { measured: share * LIMIT_SHARE, held: share * LIMIT_SHARE, unknown: !known, cut: false };
  return (
    <div class={`air-bar air-bar-${share >= 1 ? 'danger' : known ? 'plain' : 'unknown'}`}>
      <p class="air-bar-name">
        {airWords.doseName} <small>{airWords.doseLong}</small>
      </p>
      <Track bar={bar} label={airWords.barSaid(airWords.doseName, said, '')} />
      <p class="air-bar-said value">
        {share >= 1 && <Shape of="danger" />} {!known && <Shape of="blind" />} {said}
      </p>
    </div>
  );
}

function Key() {
  return (
    <ul class="air-key">
      <li>
        <span class="air-swatch air-swatch-measured" /> {airWords.keyMeasured}
      </li>
      <li>
        <span class="air-swatch air-swatch-held" /> {airWords.keyHeld}
      </li>
      <li>
        <span class="air-swatch air-swatch-limit" /> {airWords.limitTick}
      </li>
    </ul>
  );
}
