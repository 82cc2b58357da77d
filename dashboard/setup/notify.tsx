import './notify.css';
import { useState } from 'preact/hooks';
import type { NotifyWay } from '../../hub/contract/notify.ts';
import { Button } from '../parts/button.tsx';
import { Confirm } from '../parts/confirm.tsx';
import { ProblemNote } from '../parts/problem.tsx';
import { useAction } from '../parts/use-action.ts';
import { useAnswer } from '../parts/use-answer.ts';
import { useShell } from '../shell.ts';
import { notifyWords } from '../words/notify.ts';
import { setupWords } from '../words/setup.ts';
import { NotifyLog } from './notify-log.tsx';
import { NotifyPush } from './notify-push.tsx';
import { NotifySettingsForm } from './notify-settings.tsx';
import { WayDialog } from './notify-way-dialog.tsx';
import { WayTable } from './notify-ways.tsx';

/** Reaching people: the ways with their tests, this device, what all share, and what was sent. */
export function Notify() {
  const { api } = useShell();
  const ways = useAnswer('ways', () => api.notify.listWays());
  const settings = useAnswer('settings', () => api.notify.settings());
  const log = useAnswer('log', () => api.notify.log());
  const [edited, setEdited] = useState<NotifyWay | 'new' | null>(null);
  const [leaving, setLeaving] = useState<NotifyWay | null>(null);
  const [said, setSaid] = useState('');
  const press = useAction();
  const test = (way: NotifyWay) => {
    setSaid('');
    press.run(async () => {
      const { ok, detail } = await api.notify.test(way.id);
      setSaid(`${way.name}: ${ok ? notifyWords.testSent : notifyWords.testFailed(detail)}`);
      ways.reload();
      log.reload();
    });
  };
  return (
    <>
      <p class="notify-caution">{notifyWords.caution}</p>
      {ways.answer.state === 'waiting' && <p role="status">{setupWords.asking}</p>}
      {ways.answer.state === 'failed' && <ProblemNote error={ways.answer.error} />}
      {ways.answer.state === 'here' && (
        <WayTable
          ways={ways.answer.value}
          log={log.answer.state === 'here' ? log.answer.value : []}
          busy={press.busy}
          onTest={test}
          onEdit={setEdited}
          onRemove={setLeaving}
        />
      )}
      <p role="status">{said}</p>
      <ProblemNote error={press.error} />
      <p>
        <Button onPress={() => setEdited('new')}>{notifyWords.add}</Button>
      </p>
      {settings.answer.state === 'failed' && <ProblemNote error={settings.answer.error} />}
      {settings.answer.state === 'here' && (
        <>
          <NotifyPush settings={settings.answer.value} onDone={ways.reload} />
          <NotifySettingsForm settings={settings.answer.value} onDone={settings.reload} />
        </>
      )}
      <NotifyLog answer={log.answer} reload={log.reload} />
      {edited !== null && (
        <WayDialog
          way={edited === 'new' ? null : edited}
          onClose={() => setEdited(null)}
          onDone={ways.reload}
        />
      )}
      {leaving && (
        <Confirm
          title={notifyWords.removeTitle(leaving.name)}
          words={notifyWords.removeLong}
          yes={notifyWords.removeShort}
          no={setupWords.keep}
          act={() => api.notify.removeWay(leaving.id)}
          onClose={() => setLeaving(null)}
          onDone={ways.reload}
        />
      )}
    </>
  );
}
