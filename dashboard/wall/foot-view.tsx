import type { ComponentChildren } from 'preact';
import type { ShopSettings } from '../../hub/contract/shop.ts';
import { Shape } from '../parts/shape.tsx';
import { useShell } from '../shell.ts';
import { amount, number } from '../words/format.ts';
import { since, timeOfDay } from '../words/time.ts';
import { footWords, wallWords } from '../words/wall.ts';
import { type AirCell, footOf, type SupplyCell } from './foot.ts';

/** Air and gas, at all times. */
export function FootView() {
  const { feed } = useShell();
  const state = feed.state.value;
  if (state === null) return null;
  const foot = footOf(state, feed.now.value);
  return (
    <footer class="foot">
      <Air cell={foot.air} settings={state.shop.settings} now={feed.now.value} />
      {foot.supplies.map((cell) => (
        <Supply key={cell.channel.id} cell={cell} settings={state.shop.settings} now={feed.now.value} />
      ))}
    </footer>
  );
}

interface Shown {
  readonly settings: ShopSettings;
  readonly now: number;
}

function Air({ cell, settings, now }: Shown & { readonly cell: AirCell }) {
  const first = number(settings.carbonMonoxideFirstPpm);
  const second = number(settings.carbonMonoxideSecondPpm);
  switch (cell.kind) {
    case 'no-sensor':
      return <AirFrame tone="blind" value={footWords.airNoSensor} detail={footWords.airNoSensorLong} />;
    case 'blind':
      return (
        <AirFrame tone="blind" value={footWords.airBlind} detail={footWords.limits(first, second)}>
          {cell.last && (
            <p class="foot-detail">
              <s class="stale">{number(cell.last.ppm)} ppm</s> {wallWords.old(since(cell.last.at, now))}
            </p>
          )}
        </AirFrame>
      );
    case 'measured':
      return (
        <AirFrame
          tone={AIR_TONES[cell.level]}
          value={`${number(cell.ppm)} ppm`}
          detail={
            cell.level === 'over-second'
              ? footWords.overSecond(second)
              : cell.level === 'over-first'
                ? footWords.overFirst(first)
                : footWords.limits(first, second)
          }
        >
          <AirScale ppm={cell.ppm} settings={settings} />
          {cell.silent > 0 && (
            <p class="foot-detail">
              <Shape of="blind" /> {footWords.silent(cell.silent, cell.sensors)}
            </p>
          )}
        </AirFrame>
      );
    default:
      return cell satisfies never;
  }
}

const AIR_TONES = { 'under-first': 'plain', 'over-first': 'warning', 'over-second': 'danger' } as const;
type AirTone = (typeof AIR_TONES)[keyof typeof AIR_TONES] | 'blind';

interface AirFrameProps {
  readonly tone: AirTone;
  readonly value: string;
  readonly detail: string;
  readonly children?: ComponentChildren;
}

function AirFrame({ tone, value, detail, children }: AirFrameProps) {
  return (
    <div class={`foot-cell foot-air foot-${tone}`}>
      {tone !== 'plain' && <Shape of={tone} />}
      <div>
        <p class="foot-label">
          {footWords.air} <small>{footWords.aid}</small> <LastKnown />
        </p>
        <p class="foot-value value">{value}</p>
      </div>
      <div class="foot-side">
        <p class="foot-detail">{detail}</p>
        {children}
      </div>
    </div>
  );
}

/** While the screen is blind, when its values were last known. */
function LastKnown() {
  const { feed } = useShell();
  if (!feed.blind.value || feed.heardAt.value === null) return null;
  return <span class="last-known">{wallWords.lastKnown(timeOfDay(feed.heardAt.value))}</span>;
}

/** Where the reading stands between nothing and past the second limit, with both limits ticked. */
function AirScale({ ppm, settings }: { readonly ppm: number; readonly settings: ShopSettings }) {
  const { carbonMonoxideFirstPpm: first, carbonMonoxideSecondPpm: second } = settings;
  const whole = second * 1.25;
  const place = (value: number) => `${(100 * Math.min(1, Math.max(0, value / whole))).toFixed(2)}%`;
  return (
    <div class="air-scale" aria-hidden="true">
      <span class="air-tick" style={{ left: place(first) }} />
      <span class="air-tick" style={{ left: place(second) }} />
      <span class="air-now" style={{ left: place(ppm) }} />
    </div>
  );
}

function Supply({ cell, settings, now }: Shown & { readonly cell: SupplyCell }) {
  const { channel, freshness, furnaceName } = cell;
  const name = channel.label || (channel.quantity === 'mass' ? footWords.mass : footWords.pressure);
  const shown = 'reading' in freshness ? amount(freshness.reading.value, channel.quantity, settings) : null;
  const words = shown && `${shown.number} ${shown.unit}`;
  return (
    <div class={`foot-cell foot-${freshness.kind}`}>
      {freshness.kind !== 'fresh' && <Shape of="blind" />}
      <div>
        <p class="foot-label">
          {furnaceName ? footWords.of(name, furnaceName) : name} <LastKnown />
        </p>
        {freshness.kind === 'fresh' && <p class="foot-value value">{words}</p>}
        {freshness.kind === 'old' && (
          <p class="foot-value">
            <s class="stale">{words}</s> <span>{wallWords.old(since(freshness.reading.at, now))}</span>
          </p>
        )}
        {freshness.kind === 'doubtful' && <p class="foot-value">{footWords.doubtful}</p>}
        {freshness.kind === 'never' && <p class="foot-value">{footWords.never}</p>}
      </div>
    </div>
  );
}
