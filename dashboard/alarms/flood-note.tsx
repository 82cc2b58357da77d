import { Shape } from '../parts/shape.tsx';
import { useShell } from '../shell.ts';
import { alarmWords } from '../words/alarms.ts';
import { since } from '../words/time.ts';

/** Says that more alarms come than a person can answer, for as long as the hub says so. */
export function FloodNote() {
  const { feed } = useShell();
  const began = feed.floodSince.value;
  if (began === null) return null;
  return (
    <div class="alarms-flood" role="status">
      <Shape of="warning" />
      <p>
        <strong>{alarmWords.flood(since(began, feed.now.value))}.</strong> {alarmWords.floodLong}
      </p>
    </div>
  );
}
