import { useState } from 'preact/hooks';
import type { Alarm } from '../../hub/contract/alarm.ts';
import { isPutAside } from '../../hub/contract/alarm-groups.ts';
import { Button } from '../parts/button.tsx';
import { ProblemNote } from '../parts/problem.tsx';
import { useAction } from '../parts/use-action.ts';
import { whoIsHere } from '../pieces/who.ts';
import { useShell } from '../shell.ts';
import { alarmWords } from '../words/alarms.ts';
import { GiveBackDialog } from './give-back-dialog.tsx';
import { SetAsideDialog } from './set-aside-dialog.tsx';
import { type Act, actOf } from './standing.ts';

const ACT_WORDS: Readonly<Record<Act, string>> = {
  acknowledge: alarmWords.acknowledge,
  reset: alarmWords.reset,
  unshelve: alarmWords.unshelve,
  'give-back': alarmWords.giveBack,
};

/** Who presses, when nobody said: the screen itself. */
const NOBODY = 'alarms page';

/** The one thing to press, and beside it, small, the way to put the alarm aside. */
export function CardActs({ alarm }: { readonly alarm: Alarm }) {
  const { api } = useShell();
  const [dialog, setDialog] = useState<'aside' | 'back' | null>(null);
  const press = useAction();
  const act = actOf(alarm);
  const by = whoIsHere.value.trim() || NOBODY;
  const go = (what: Act) => {
    if (what === 'give-back') setDialog('back');
    else press.run(() => SEND[what](api, alarm.id, by));
  };
  const mayPutAside = !isPutAside(alarm) && !alarm.dangerToLife;
  return (
    <div class="alarm-acts">
      {act !== null && (
        <Button
          tone="main"
          busy={press.busy}
          name={alarmWords.nameOf(ACT_WORDS[act], alarm.title)}
          onPress={() => go(act)}
        >
          {ACT_WORDS[act]}
        </Button>
      )}
      {mayPutAside && (
        <Button name={alarmWords.nameOf(alarmWords.putAside, alarm.title)} onPress={() => setDialog('aside')}>
          {alarmWords.putAside}
        </Button>
      )}
      {alarm.dangerToLife && <p class="alarm-never">{alarmWords.cannotPutAside}</p>}
      <ProblemNote error={press.error} />
      {dialog === 'aside' && <SetAsideDialog alarm={alarm} onClose={() => setDialog(null)} />}
      {dialog === 'back' && <GiveBackDialog alarm={alarm} onClose={() => setDialog(null)} />}
    </div>
  );
}

type Api = ReturnType<typeof useShell>['api'];

const SEND: Readonly<Record<Exclude<Act, 'give-back'>, (api: Api, id: string, by: string) => Promise<void>>> =
  {
    acknowledge: async (api, id, by) => {
      await api.acknowledge(id, by);
    },
    reset: async (api, id, by) => {
      await api.alarms.reset(id, { by });
    },
    unshelve: async (api, id, by) => {
      await api.alarms.unshelve(id, by);
    },
  };
