import { useState } from 'preact/hooks';
import { QUANTITY_FACTS } from '../../hub/contract/quantity.ts';
import type { Channel } from '../../hub/contract/shop.ts';
import type { FeedState } from '../feed/state.ts';
import { channelLabel } from '../firings/channels.ts';
import { Button } from '../parts/button.tsx';
import { Confirm } from '../parts/confirm.tsx';
import { ProblemNote } from '../parts/problem.tsx';
import { type Column, Table } from '../parts/table.tsx';
import { useAction } from '../parts/use-action.ts';
import { useShell } from '../shell.ts';
import { channelWords, ROLE_WORDS, setupWords } from '../words/setup.ts';
import { duration } from '../words/time.ts';
import { ChannelDialog } from './channel-dialog.tsx';
import { newestText } from './newest.ts';

/** Every measured quantity: what it is for, whose it is, what it can mean, when it counts as old. */
export function Channels({ state }: { readonly state: FeedState }) {
  const { api, feed } = useShell();
  const [edited, setEdited] = useState<Channel | 'new' | null>(null);
  const [leaving, setLeaving] = useState<Channel | null>(null);
  const press = useAction();
  const all = [...state.channels.values()]
    .filter((channel) => !channel.archived)
    .sort((a, b) => a.node.localeCompare(b.node) || a.name.localeCompare(b.name));
  const watched = all.filter((channel) => channel.adopted);
  const offered = all.filter((channel) => !channel.adopted);
  const columns = columnsOf(state, feed.now.value);
  const adopt = (channel: Channel) =>
    press.run(async () => {
      await api.setup.changeChannel(channel.id, { adopted: true });
    });
  return (
    <>
      <Table
        caption={channelWords.caption}
        columns={[...columns, acts((channel) => ownActs(channel, setEdited, setLeaving))]}
        rows={watched}
        rowKey={(channel) => channel.id}
        empty={channelWords.empty}
      />
      <p>
        <Button onPress={() => setEdited('new')}>{channelWords.add}</Button>
      </p>
      {offered.length > 0 && (
        <>
          <p class="aside">{channelWords.offersLong}</p>
          <ProblemNote error={press.error} />
          <Table
            caption={channelWords.offersCaption}
            columns={[...columns, acts((channel) => offerActs(channel, adopt, setLeaving))]}
            rows={offered}
            rowKey={(channel) => channel.id}
            empty={channelWords.empty}
          />
        </>
      )}
      {edited !== null && (
        <ChannelDialog
          channel={edited === 'new' ? null : edited}
          state={state}
          onClose={() => setEdited(null)}
        />
      )}
      {leaving && (
        <Confirm
          title={channelWords.putAwayTitle(channelLabel(leaving))}
          words={channelWords.putAwayLong}
          yes={setupWords.putAway}
          no={setupWords.keep}
          act={() => api.setup.removeChannel(leaving.id)}
          onClose={() => setLeaving(null)}
          onDone={() => undefined}
        />
      )}
    </>
  );
}

function columnsOf(state: FeedState, nowMs: number): Column<Channel>[] {
  return [
    { key: 'label', head: channelWords.label, cell: (channel) => channel.label || setupWords.none },
    { key: 'name', head: channelWords.name, cell: (channel) => `${channel.node}/${channel.name}` },
    {
      key: 'quantity',
      head: channelWords.quantity,
      cell: (channel) => QUANTITY_FACTS[channel.quantity].label,
    },
    { key: 'role', head: channelWords.role, cell: (channel) => ROLE_WORDS[channel.role] },
    {
      key: 'furnace',
      head: channelWords.furnace,
      cell: ({ furnaceId }) =>
        furnaceId === null ? setupWords.noFurnace : (state.furnaces.get(furnaceId)?.name ?? setupWords.none),
    },
    {
      key: 'stale',
      head: channelWords.stale,
      cell: (channel) => duration(channel.staleAfterSeconds),
      align: 'right',
    },
    {
      key: 'latest',
      head: channelWords.latest,
      cell: (channel) => <span class="value">{newestText(channel, state.shop.settings, nowMs)}</span>,
    },
  ];
}

function acts(cell: Column<Channel>['cell']): Column<Channel> {
  return { key: 'acts', head: setupWords.actions, cell };
}

function ownActs(channel: Channel, edit: (channel: Channel) => void, leave: (channel: Channel) => void) {
  const label = channelLabel(channel);
  return (
    <div class="form-acts row-acts">
      <Button name={channelWords.edit(label)} onPress={() => edit(channel)}>
        {setupWords.edit}
      </Button>
      <Button name={channelWords.putAway(label)} onPress={() => leave(channel)}>
        {setupWords.putAway}
      </Button>
    </div>
  );
}

function offerActs(channel: Channel, adopt: (channel: Channel) => void, leave: (channel: Channel) => void) {
  const label = channelLabel(channel);
  return (
    <div class="form-acts row-acts">
      <Button name={channelWords.adoptName(label)} onPress={() => adopt(channel)}>
        {channelWords.adopt}
      </Button>
      <Button name={channelWords.putAway(label)} onPress={() => leave(channel)}>
        {setupWords.putAway}
      </Button>
    </div>
  );
}
