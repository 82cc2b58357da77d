import { TextField } from '../parts/field.tsx';
import { alarmWords } from '../words/alarms.ts';

interface WhoWhyProps {
  readonly texts: { readonly by: string; readonly why: string };
  readonly set: (change: { readonly by?: string; readonly why?: string }) => void;
  readonly fault: (path: string) => string | undefined;
  /** What is asked for as the reason. */
  readonly whyLabel: string;
}

/** Who does it and why: both stand in the journal. */
export function WhoWhyFields({ texts, set, fault, whyLabel }: WhoWhyProps) {
  return (
    <>
      <TextField
        label={alarmWords.by}
        value={texts.by}
        onChange={(by) => set({ by })}
        maxLength={80}
        error={fault('by')}
      />
      <TextField
        label={whyLabel}
        value={texts.why}
        onChange={(why) => set({ why })}
        maxLength={500}
        rows={2}
        error={fault('why')}
      />
    </>
  );
}
