import '../parts/sheets.css';
import './alarms.css';
import { useEffect } from 'preact/hooks';
import type { FeedState } from '../feed/state.ts';
import { TextField } from '../parts/field.tsx';
import { Page } from '../parts/page.tsx';
import { whoIsHere } from '../pieces/who.ts';
import { useShell } from '../shell.ts';
import { alarmWords } from '../words/alarms.ts';
import { asking } from './asking.ts';
import { AlarmCard } from './card.tsx';
import { FloodNote } from './flood-note.tsx';
import { GiveBackDialog } from './give-back-dialog.tsx';
import { GroupView } from './group-view.tsx';
import { HeldBackPart } from './held-back.tsx';
import { SetAsideDialog } from './set-aside-dialog.tsx';
import { sortAlarms } from './sorted.ts';

/** What stands now: the most urgent action first, what follows from it under it, and all that is set aside. */
export function AlarmsPage() {
  const { feed } = useShell();
  const state = feed.state.value;
  return (
    <div class="alarms-page">
      <Page title={alarmWords.title}>
        {feed.blind.value && (
          <p class="alarms-old" role="alert">
            {alarmWords.notCurrent}
          </p>
        )}
        <OpenForm />
        {state === null ? <p role="status">{alarmWords.asking}</p> : <Standing state={state} />}
      </Page>
    </div>
  );
}

/** Leaving the page closes the form. */
function OpenForm() {
  const close = () => {
    asking.value = null;
  };
  useEffect(() => close, []);
  const open = asking.value;
  if (open === null) return null;
  const Form = open.form === 'set-aside' ? SetAsideDialog : GiveBackDialog;
  return <Form key={open.alarm.id} alarm={open.alarm} onClose={close} />;
}

function Standing({ state }: { readonly state: FeedState }) {
  const { groups, shelved, outOfService, suppressed } = sortAlarms(state.alarms.values());
  return (
    <>
      <FloodNote />
      <section class="alarms-part" aria-labelledby="alarms-now">
        <h2 id="alarms-now">{groups.length === 0 ? alarmWords.none : alarmWords.standing(groups.length)}</h2>
        {groups.length === 0 && <p class="aside">{alarmWords.noneLong}</p>}
        <ol class="alarms-groups">
          {groups.map((group, at) => (
            <GroupView key={group.lead.id} group={group} first={at === 0} />
          ))}
        </ol>
        <div class="alarms-who">
          <TextField
            label={alarmWords.whoIsHere}
            hint={alarmWords.whoHint}
            value={whoIsHere.value}
            onChange={(name) => {
              whoIsHere.value = name;
            }}
            maxLength={80}
          />
        </div>
      </section>
      <div class="alarms-aside">
        <AsidePart title={alarmWords.shelf} none={alarmWords.shelfNone} alarms={shelved} />
        <AsidePart title={alarmWords.out} none={alarmWords.outNone} alarms={outOfService} />
        <HeldBackPart suppressed={suppressed} />
      </div>
    </>
  );
}

interface AsidePartProps {
  readonly title: string;
  readonly none: string;
  readonly alarms: ReturnType<typeof sortAlarms>['shelved'];
}

/** A list of its own for each way of setting aside, there also when it is empty: silence must be seen to be empty. */
function AsidePart({ title, none, alarms }: AsidePartProps) {
  return (
    <section class="alarms-part" aria-label={title}>
      <h2>{title}</h2>
      {alarms.length === 0 && <p class="aside">{none}</p>}
      <ul class="alarms-list">
        {alarms.map((alarm) => (
          <li key={alarm.id}>
            <AlarmCard alarm={alarm} look="aside" />
          </li>
        ))}
      </ul>
    </section>
  );
}
