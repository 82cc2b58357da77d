import { useState } from 'preact/hooks';
import type { NotifySettings } from '../../hub/contract/notify.ts';
import { Button } from '../parts/button.tsx';
import { TextField } from '../parts/field.tsx';
import { ProblemNote } from '../parts/problem.tsx';
import { useAction } from '../parts/use-action.ts';
import { useShell } from '../shell.ts';
import { pushWords } from '../words/notify.ts';
import { refusedAt } from './notify-refused.ts';
import { browserPush, pushObstacle, subscribe } from './notify-subscribe.ts';

interface NotifyPushProps {
  readonly settings: NotifySettings;
  readonly onDone: () => void;
}

/** Makes the device in hand a way of reaching people, or says why it cannot be one. */
export function NotifyPush({ settings, onDone }: NotifyPushProps) {
  const { api } = useShell();
  const press = useAction();
  const [name, setName] = useState('');
  const obstacle = pushObstacle(browserPush()) ?? (settings.contact === null ? pushWords.needsContact : null);
  const add = () =>
    press.run(async () => {
      const subscription = await subscribe(settings.pushPublicKey);
      await api.notify.createWay({ name, target: { kind: 'push', subscription } });
      setName('');
      onDone();
    });
  return (
    <section class="notify-part">
      <h2>{pushWords.title}</h2>
      <p class="aside">{pushWords.long}</p>
      {obstacle !== null && <p>{obstacle}</p>}
      {obstacle === null && (
        <>
          <TextField
            label={pushWords.name}
            value={name}
            onChange={setName}
            maxLength={80}
            error={refusedAt(press.error, 'name')}
          />
          <div class="form-acts">
            <Button busy={press.busy} disabled={name.trim() === ''} onPress={add}>
              {pushWords.add}
            </Button>
          </div>
        </>
      )}
      <ProblemNote error={press.error} />
    </section>
  );
}
