import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import { unbroken } from '../words/format.ts';
import { magnetSentences } from './magnet-words.ts';
import type { Critical } from './scale-rows.ts';

interface MagnetProps {
  readonly critical: Critical;
  readonly title: string;
  readonly unit: DisplayUnit;
}

/** What judging by magnet plus about 100 °C does to this steel. */
export function Magnet({ critical, title, unit }: MagnetProps) {
  const { verdict, rest } = magnetSentences(title, critical, unit);
  return (
    <>
      <p class="steel-say">{unbroken(verdict)}</p>
      <p class="steel-prose">{unbroken(rest.join(' '))}</p>
    </>
  );
}
