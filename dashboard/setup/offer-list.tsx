import { useState } from 'preact/hooks';
import type { FeedState } from '../feed/state.ts';
import { Button } from '../parts/button.tsx';
import { SelectField } from '../parts/field.tsx';
import { ProblemNote } from '../parts/problem.tsx';
import { useAction } from '../parts/use-action.ts';
import { useShell } from '../shell.ts';
import { nodeWords, setupWords, startWords } from '../words/setup.ts';
import { newestText } from './newest.ts';
import { type Offer, offersOf } from './offers.ts';

/** Everything on offer; one press takes a node in with all its channels. */
export function OfferList({ state }: { readonly state: FeedState }) {
  const [said, tell] = useState('');
  const offers = offersOf(state);
  return (
    <div class="offers">
      {offers.length === 0 && <p>{startWords.nothingOffered}</p>}
      {offers.map((offer) => (
        <OfferItem key={offer.node.id} offer={offer} state={state} tell={tell} />
      ))}
      <p role="status" class="aside">
        {said}
      </p>
    </div>
  );
}

interface OfferItemProps {
  readonly offer: Offer;
  readonly state: FeedState;
  readonly tell: (words: string) => void;
}

function OfferItem({ offer: { node, channels }, state, tell }: OfferItemProps) {
  const { api } = useShell();
  const furnaces = [...state.furnaces.values()];
  const [chosen, setChosen] = useState<string | null>(null);
  // With one furnace there is nothing to choose; with several a wrong guess would be taken for a choice.
  const furnaceId = chosen ?? (furnaces.length === 1 ? (furnaces[0]?.id ?? '') : '');
  const press = useAction();
  const adopt = () =>
    press.run(async () => {
      await api.setup.adoptNode(node.id, { furnaceId: furnaceId === '' ? null : furnaceId });
      tell(nodeWords.adopted(node.name));
    });
  const names = channels.map((channel) => channel.name).join(', ') || nodeWords.offersNothing;
  return (
    <section class="offer" aria-label={node.name}>
      <p>{nodeWords.waitsLong(node.name, names)}</p>
      <ul class="offer-channels">
        {channels.map((channel) => (
          <li key={channel.id}>
            {channel.name}: <span class="value">{newestText(channel, state.shop.settings)}</span>
          </li>
        ))}
      </ul>
      <div class="form-row">
        <SelectField
          label={nodeWords.furnace(node.name)}
          hint={nodeWords.furnaceHint}
          value={furnaceId}
          options={[
            { value: '', label: setupWords.noFurnace },
            ...furnaces.map(({ id, name }) => ({ value: id, label: name })),
          ]}
          onChange={setChosen}
        />
        <div class="offer-act">
          <Button tone="main" busy={press.busy} name={nodeWords.adoptName(node.name)} onPress={adopt}>
            {nodeWords.adopt}
          </Button>
        </div>
      </div>
      <ProblemNote error={press.error} />
    </section>
  );
}
