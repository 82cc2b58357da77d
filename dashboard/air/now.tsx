import type { ShopSettings } from '../../hub/contract/shop.ts';
import { LinkButton } from '../parts/button.tsx';
import { Shape, type ShapeKind } from '../parts/shape.tsx';
import { hrefTo } from '../router.ts';
import { airWords } from '../words/air.ts';
import { number } from '../words/format.ts';
import { day, since, timeOfDaySeconds } from '../words/time.ts';
import { ppmText } from './bars.ts';
import { type CarbonMonoxideNow, type DateNote, dateNotes } from './now.ts';

interface NowProps {
  readonly sensors: readonly CarbonMonoxideNow[];
  readonly settings: ShopSettings;
  readonly nowMs: number;
  /** When the hub was last heard, in words; null: it is heard now. */
  readonly lastKnown: string | null;
}

/** The level of carbon monoxide at each sensor, to be read from across the room. */
export function CarbonMonoxideNowView({ sensors, settings, nowMs, lastKnown }: NowProps) {
  return (
    <section class="air-now-part" aria-labelledby="air-now">
      <h2 id="air-now">{airWords.nowTitle}</h2>
      <div class="air-plates">
        {sensors.length === 0 && <NoSensor />}
        {sensors.map((sensor) => (
          <Plate
            key={sensor.channel.id}
            sensor={sensor}
            settings={settings}
            nowMs={nowMs}
            lastKnown={lastKnown}
          />
        ))}
      </div>
    </section>
  );
}

function NoSensor() {
  return (
    <div class="air-plate air-plate-blind">
      <Shape of="blind" />
      <div class="air-plate-said">
        <p class="air-plate-value">{airWords.noSensor}</p>
        <p class="air-plate-line">{airWords.noSensorLong}</p>
        <LinkButton href={hrefTo({ view: 'setup', section: 'channels' })}>{airWords.setUp}</LinkButton>
      </div>
    </div>
  );
}

interface PlateProps extends Omit<NowProps, 'sensors'> {
  readonly sensor: CarbonMonoxideNow;
}

function Plate({ sensor, settings, nowMs, lastKnown }: PlateProps) {
  const { channel } = sensor;
  const { tone, value, unit, line } = plateOf(sensor, settings, nowMs);
  return (
    <div class={`air-plate air-plate-${tone}`}>
      {tone !== 'plain' && <Shape of={tone} />}
      <div class="air-plate-said">
        <p class="air-plate-name">
          {channel.label || channel.name}{' '}
          {lastKnown !== null && <span class="air-last-known">{airWords.lastKnown(lastKnown)}</span>}
        </p>
        <p class="air-plate-value value">
          {value} {unit !== '' && <small>{unit}</small>}
        </p>
        <p class="air-plate-line">{line}</p>
        <ul class="air-plate-notes">
          {'at' in sensor.says && sensor.says.kind === 'measured' && (
            <li>{airWords.readAt(timeOfDaySeconds(sensor.says.at))}</li>
          )}
          {sensor.says.kind === 'silent' && (
            <li>
              <s>{airWords.lastValue(`${ppmText(sensor.says.value)} ppm`)}</s>
            </li>
          )}
          {dateNotes(channel, nowMs).map((note) => (
            <li key={note.kind} class={isGrave(note) ? 'air-grave' : undefined}>
              {isGrave(note) && <Shape of="warning" />} {dateText(note)}
            </li>
          ))}
        </ul>
      </div>
    </div>
  );
}

interface PlateSaid {
  readonly tone: ShapeKind | 'plain';
  readonly value: string;
  readonly unit: string;
  readonly line: string;
}

function plateOf({ says, level }: CarbonMonoxideNow, settings: ShopSettings, nowMs: number): PlateSaid {
  const blind = { tone: 'blind', unit: '' } as const;
  switch (says.kind) {
    case 'never':
      return { ...blind, value: airWords.blind, line: airWords.blindNever };
    case 'silent':
      return { ...blind, value: airWords.blind, line: airWords.blindSince(since(says.at, nowMs)) };
    case 'doubtful':
      return {
        ...blind,
        value: airWords.doubtful,
        line: airWords.doubtfulLong(`${ppmText(says.value)} ppm`),
      };
    case 'saturated':
      return {
        tone: 'danger',
        unit: '',
        value: airWords.saturated,
        line: airWords.saturatedLong(`${ppmText(says.value)} ppm`),
      };
    case 'measured':
      return { value: ppmText(says.value), unit: 'ppm', ...levelSaid(level, settings) };
    default:
      return says satisfies never;
  }
}

function levelSaid(
  level: CarbonMonoxideNow['level'],
  settings: ShopSettings,
): Pick<PlateSaid, 'tone' | 'line'> {
  const first = number(settings.carbonMonoxideFirstPpm);
  const second = number(settings.carbonMonoxideSecondPpm);
  if (level === 'over-second') return { tone: 'danger', line: airWords.overSecond(second) };
  if (level === 'over-first') return { tone: 'warning', line: airWords.overFirst(first) };
  return { tone: 'plain', line: airWords.under(first, second) };
}

function isGrave({ kind }: DateNote): boolean {
  return kind === 'overdue' || kind === 'ended';
}

function dateText(note: DateNote): string {
  switch (note.kind) {
    case 'no-dates':
      return airWords.noDates;
    case 'overdue':
      return airWords.calibrationOverdue(day(note.at));
    case 'ended':
      return airWords.endOfLife(day(note.at));
    case 'due':
      return airWords.calibrationDue(day(note.at));
    case 'ends':
      return airWords.endOfLifeAt(day(note.at));
    case 'calibrated':
      return airWords.calibratedAt(day(note.at));
    default:
      return note satisfies never;
  }
}
