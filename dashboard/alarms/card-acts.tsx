import type { Alarm } from '../../hub/contract/alarm.ts';
import { isPutAside } from '../../hub/contract/alarm-groups.ts';
import { Button } from '../parts/button.tsx';
import { ProblemNote } from '../parts/problem.tsx';
import { useAction } from '../parts/use-action.ts';
import { whoIsHere } from '../pieces/who.ts';
import { useShell } from '../shell.ts';
import { alarmWords } from '../words/alarms.ts';
import { asking } from './asking.ts';
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
  const press = useAction();
  const act = actOf(alarm);
  const by = whoIsHere.value.trim() || NOBODY;
  const go = (what: Act) => {
    if (what === 'give-back') asking.value = { form: 'give-back', alarm };
    else press.run(() => SEND[what](api, alarm.id, by));
  };
  const askAside = () => {
    asking.value = { form: 'set-aside', alarm };
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
        <Button name={alarmWords.nameOf(alarmWords.putAside, alarm.title)} onPress={askAside}>
          {alarmWords.putAside}
        </Button>
      )}
      {alarm.dangerToLife && <p class="alarm-never">{alarmWords.cannotPutAside}</p>}
      <ProblemNote error={press.error} />
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
