import { useState } from 'preact/hooks';
import type { FiringSummary } from '../../hub/contract/firing.ts';
import type { FurnaceFitTried } from '../../hub/contract/furnace-fit.ts';
import type { Channel, Furnace } from '../../hub/contract/shop.ts';
import type { FeedState } from '../feed/state.ts';
import { channelLabel } from '../firings/channels.ts';
import { Button } from '../parts/button.tsx';
import { Dialog } from '../parts/dialog.tsx';
import { SelectField } from '../parts/field.tsx';
import { ProblemNote } from '../parts/problem.tsx';
import { useAction } from '../parts/use-action.ts';
import { useAnswer } from '../parts/use-answer.ts';
import { useShell } from '../shell.ts';
import { setupWords } from '../words/setup.ts';
import { fitWords, SECTION_WORDS } from '../words/setup-fit.ts';
import { dayAndTime } from '../words/time.ts';
import { checkFit, type FitQuestion, type FitTexts, fitText, loadChannels } from './fit-form.ts';
import { FitFound } from './fit-found.tsx';
import { FormFrame } from './form-frame.tsx';
import { UnitField } from './unit-field.tsx';
import { useTextForm } from './use-text-form.ts';

const NAMES: Readonly<Record<string, string>> = {
  firingId: fitWords.firing,
  thicknessMm: fitWords.size,
};
/** The firings that a list can sensibly offer. */
const MOST_FIRINGS = 50;

interface FitDialogProps {
  readonly furnace: Furnace;
  readonly state: FeedState;
  readonly onClose: () => void;
}

/** Learn from a finished firing how heat goes over in a furnace; look at what is left; keep it or leave it. */
export function FitDialog({ furnace, state, onClose }: FitDialogProps) {
  const { api } = useShell();
  const press = useAction();
  const unit = state.shop.settings.displayUnit;
  const loads = loadChannels(state.channels.values(), furnace.id);
  const { answer } = useAnswer(furnace.id, () =>
    api.listFirings({ furnaceId: furnace.id, status: 'finished', limit: MOST_FIRINGS }),
  );
  return (
    <Dialog title={fitWords.title(furnace.name)} onClose={onClose} closeWord={setupWords.cancel}>
      <div class="setup-part">
        <p class="aside">{fitWords.long}</p>
        <p>
          {fitWords.now}: {fitText(furnace.fit, unit)}
        </p>
        {furnace.fit && (
          <div class="form-acts">
            <Button
              busy={press.busy}
              onPress={() =>
                press.run(async () => {
                  await api.setup.forgetFit(furnace.id);
                  onClose();
                })
              }
            >
              {fitWords.forget}
            </Button>
          </div>
        )}
        <ProblemNote error={press.error} />
        {answer.state === 'waiting' && <p role="status">{setupWords.asking}</p>}
        {answer.state === 'failed' && <ProblemNote error={answer.error} />}
        {loads.length === 0 && <p>{fitWords.noLoad}</p>}
        {answer.state === 'here' && answer.value.length === 0 && <p>{fitWords.noFiring}</p>}
        {answer.state === 'here' && answer.value.length > 0 && loads.length > 0 && (
          <FitForm furnace={furnace} state={state} firings={answer.value} loads={loads} onDone={onClose} />
        )}
      </div>
    </Dialog>
  );
}

interface FitFormProps {
  readonly furnace: Furnace;
  readonly state: FeedState;
  readonly firings: readonly FiringSummary[];
  readonly loads: readonly Channel[];
  readonly onDone: () => void;
}

function FitForm({ furnace, state, firings, loads, onDone }: FitFormProps) {
  const { api } = useShell();
  const trying = useAction();
  const keeping = useAction();
  const [found, setFound] = useState<FurnaceFitTried | null>(null);
  const form = useTextForm<FitTexts, FitQuestion>(
    {
      firingId: firings[0]?.id ?? '',
      shape: 'bar',
      thickness: '',
      loadAt: 'core',
      loadChannel: loads[0]?.id ?? '',
    },
    checkFit,
  );
  const { texts, fault } = form;
  // What was found belongs to what was asked: another question, another answer.
  const set = (change: Partial<FitTexts>) => {
    setFound(null);
    form.set(change);
  };
  const send = (question: FitQuestion) =>
    trying.run(async () => setFound(await api.setup.tryFit(furnace.id, question)));
  const keep = ({ fit }: FurnaceFitTried) =>
    keeping.run(async () => {
      const { fittedAt: _, ...numbers } = fit;
      await api.setup.keepFit(furnace.id, { kind: 'numbers', ...numbers });
      onDone();
    });
  return (
    <>
      <FormFrame
        onSubmit={(event) => form.submit(event, send)}
        press={trying}
        listed={form.listed}
        nameOf={(path) => NAMES[path] ?? path}
        send={fitWords.run}
      >
        <SelectField
          label={fitWords.firing}
          value={texts.firingId}
          options={firings.map((firing) => ({ value: firing.id, label: firingLabel(firing) }))}
          onChange={(firingId) => set({ firingId })}
          error={fault('firingId')}
        />
        {loads.length > 1 && (
          <SelectField
            label={fitWords.loadChannel}
            value={texts.loadChannel}
            options={loads.map((channel) => ({ value: channel.id, label: channelLabel(channel) }))}
            onChange={(loadChannel) => set({ loadChannel })}
          />
        )}
        <SelectField<FitTexts['shape']>
          label={fitWords.section}
          value={texts.shape}
          options={(['bar', 'plate', 'sphere'] as const).map((value) => ({
            value,
            label: SECTION_WORDS[value],
          }))}
          onChange={(shape) => set({ shape })}
        />
        <UnitField
          label={fitWords.size}
          unit={fitWords.millimetres}
          value={texts.thickness}
          onChange={(thickness) => set({ thickness })}
          error={fault('thicknessMm')}
        />
        <SelectField<FitTexts['loadAt']>
          label={fitWords.place}
          value={texts.loadAt}
          options={(['core', 'surface'] as const).map((value) => ({ value, label: fitWords.places[value] }))}
          onChange={(loadAt) => set({ loadAt })}
        />
      </FormFrame>
      {found && (
        <FitFound
          found={found}
          unit={state.shop.settings.displayUnit}
          press={keeping}
          onKeep={() => keep(found)}
        />
      )}
    </>
  );
}

function firingLabel({ title, scheduleName, startedAt }: FiringSummary): string {
  return `${title || scheduleName}, ${dayAndTime(startedAt)}`;
}
