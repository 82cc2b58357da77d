import type { Channel, ShopSettings } from '../../hub/contract/shop.ts';
import type { FeedState } from '../feed/state.ts';
import { channelLabel } from '../firings/channels.ts';
import { Dialog } from '../parts/dialog.tsx';
import { useAction } from '../parts/use-action.ts';
import { useShell } from '../shell.ts';
import { channelWords, setupWords } from '../words/setup.ts';
import { ChannelFields, channelFieldName, NewChannelFields } from './channel-fields.tsx';
import {
  type ChannelChangeValue,
  type ChannelTexts,
  type ChannelValue,
  channelTexts,
  checkChannelChange,
  checkNewChannel,
} from './channel-form.ts';
import { FormFrame } from './form-frame.tsx';
import { TimeAbove } from './time-above.tsx';
import { useTextForm } from './use-text-form.ts';

interface ChannelDialogProps {
  /** Null: a new one. */
  readonly channel: Channel | null;
  readonly state: FeedState;
  readonly onClose: () => void;
}

export function ChannelDialog({ channel, state, onClose }: ChannelDialogProps) {
  return (
    <Dialog
      title={channel ? channelWords.edit(channelLabel(channel)) : channelWords.add}
      onClose={onClose}
      closeWord={setupWords.cancel}
    >
      {channel ? (
        <ChangeChannel channel={channel} state={state} onDone={onClose} />
      ) : (
        <NewChannel state={state} onDone={onClose} />
      )}
    </Dialog>
  );
}

interface FormProps {
  readonly state: FeedState;
  readonly onDone: () => void;
}

function NewChannel({ state, onDone }: FormProps) {
  const { api } = useShell();
  const press = useAction();
  const settings: ShopSettings = state.shop.settings;
  const form = useTextForm<ChannelTexts, ChannelValue>(channelTexts(null, settings), (texts) =>
    checkNewChannel(texts, settings),
  );
  const send = (value: ChannelValue) =>
    press.run(async () => {
      await api.setup.createChannel(value);
      onDone();
    });
  return (
    <FormFrame
      onSubmit={(event) => form.submit(event, send)}
      press={press}
      listed={form.listed}
      nameOf={channelFieldName}
      send={channelWords.addThis}
    >
      <NewChannelFields form={form} />
      <ChannelFields form={form} state={state} isNew refusal={press.error} />
    </FormFrame>
  );
}

function ChangeChannel({ channel, state, onDone }: FormProps & { readonly channel: Channel }) {
  const { api } = useShell();
  const press = useAction();
  const settings: ShopSettings = state.shop.settings;
  const form = useTextForm<ChannelTexts, ChannelChangeValue>(channelTexts(channel, settings), (texts) =>
    checkChannelChange(texts, settings),
  );
  const send = (value: ChannelChangeValue) =>
    press.run(async () => {
      await api.setup.changeChannel(channel.id, value);
      onDone();
    });
  return (
    <FormFrame
      onSubmit={(event) => form.submit(event, send)}
      press={press}
      listed={form.listed}
      nameOf={channelFieldName}
      send={setupWords.save}
    >
      <ChannelFields form={form} state={state} isNew={false} refusal={press.error} />
      {channel.probe && <TimeAbove channelId={channel.id} unit={settings.displayUnit} />}
    </FormFrame>
  );
}
