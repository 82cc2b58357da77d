import type { ShopSettings } from '../../hub/contract/shop.ts';
import { Shape } from '../parts/shape.tsx';
import { airWords } from '../words/air.ts';
import { amount } from '../words/format.ts';
import { since } from '../words/time.ts';
import type { RoomSensor } from './now.ts';

interface OthersProps {
  readonly sensors: readonly RoomSensor[];
  readonly settings: ShopSettings;
  readonly nowMs: number;
}

/** Carbon dioxide, oxygen, warmth and damp, where the shop measures them. */
export function OtherSensors({ sensors, settings, nowMs }: OthersProps) {
  if (sensors.length === 0) return null;
  return (
    <section class="air-part" aria-labelledby="air-others">
      <h2 id="air-others">{airWords.othersTitle}</h2>
      <dl class="air-others">
        {sensors.map(({ channel, says }) => (
          <div key={channel.id}>
            <dt>{channel.label || channel.name}</dt>
            <dd class="value">
              {says.kind === 'measured' ? amountText(says.value, channel.quantity, settings) : <Blind />}
            </dd>
            {says.kind === 'silent' && <dd>{airWords.otherBlind(since(says.at, nowMs))}</dd>}
            {says.kind === 'never' && <dd>{airWords.otherNever}</dd>}
            {says.kind === 'doubtful' && (
              <dd>{airWords.doubtfulLong(amountText(says.value, channel.quantity, settings))}</dd>
            )}
          </div>
        ))}
      </dl>
    </section>
  );
}

function amountText(
  value: number,
  quantity: RoomSensor['channel']['quantity'],
  settings: ShopSettings,
): string {
  const shown = amount(value, quantity, settings);
  return `${shown.number} ${shown.unit}`;
}

function Blind() {
  return (
    <>
      <Shape of="blind" /> {airWords.blind}
    </>
  );
}
