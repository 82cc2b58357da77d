import { useState } from 'preact/hooks';
import { HARDNESS_SCALES } from '../../hub/contract/observation.ts';
import { Button } from '../parts/button.tsx';
import { SelectField, TextField } from '../parts/field.tsx';
import { UnitField } from '../setup/unit-field.tsx';
import { SCALE_WORDS, seenWords } from '../words/pieces-seen.ts';
import { checkHardness, EMPTY_HARDNESS, type HardnessScale, type ReadingTexts } from './hardness.ts';
import type { SeenFormProps } from './seen-props.ts';

const MOST_READINGS = 40;

/** Several readings of one scale, each with its place on the piece. */
export function HardnessForm({ busy, send }: SeenFormProps) {
  const [texts, setTexts] = useState(EMPTY_HARDNESS);
  const [tried, setTried] = useState(false);
  const { value, faults } = checkHardness(texts);
  const { readings } = texts;
  const change = (key: number, part: Partial<ReadingTexts>) =>
    setTexts({
      ...texts,
      readings: readings.map((each) => (each.key === key ? { ...each, ...part } : each)),
    });
  const add = () => {
    const key = Math.max(0, ...readings.map((each) => each.key)) + 1;
    setTexts({ ...texts, readings: [...readings, { key, value: '', position: '' }] });
  };
  const submit = (event: Event) => {
    event.preventDefault();
    setTried(true);
    if (value) send(value);
  };
  return (
    <form class="form" onSubmit={submit} noValidate>
      <SelectField<HardnessScale>
        label={seenWords.scale}
        value={texts.scale}
        options={HARDNESS_SCALES.map((scale) => ({ value: scale, label: SCALE_WORDS[scale] }))}
        onChange={(scale) => setTexts({ ...texts, scale })}
      />
      {readings.map((reading, index) => (
        <div class="reading-row" key={reading.key}>
          <UnitField
            label={seenWords.reading(index + 1)}
            value={reading.value}
            unit={texts.scale}
            onChange={(text) => change(reading.key, { value: text })}
            error={tried ? faults[`${index}.value`] : undefined}
          />
          <TextField
            label={seenWords.readingPosition(index + 1)}
            value={reading.position}
            maxLength={80}
            onChange={(position) => change(reading.key, { position })}
            error={tried ? faults[`${index}.position`] : undefined}
          />
        </div>
      ))}
      <div class="form-acts">
        <Button disabled={readings.length >= MOST_READINGS} onPress={add}>
          {seenWords.addReading}
        </Button>
        <Button type="submit" tone="main" size="wall" busy={busy}>
          {seenWords.keep}
        </Button>
      </div>
    </form>
  );
}
