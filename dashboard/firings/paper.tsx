import type { FiringDetail } from '../../hub/contract/firing.ts';
import { words } from '../../hub/contract/words/words.ts';
import { useShell } from '../shell.ts';
import { firingWords, paperWords } from '../words/firings.ts';
import { dayAndTime, timeOfDay } from '../words/time.ts';
import { overText, seenText } from './happenings.tsx';
import { firingMarks } from './marks.ts';
import { forPaper, marksForPaper, paperBudget, textsForPaper } from './paper-list.ts';
import type { FiringFolder } from './use-firing.ts';

/** The parts of a firing's page that are for paper alone. */

export function PaperHead({ firing }: { readonly firing: FiringDetail }) {
  return (
    <div class="paper-only">
      {firing.simulated && <p class="paper-simulated">{paperWords.simulated}</p>}
      {firing.status === 'running' && <p>{paperWords.running(dayAndTime(firing.judgement.judgedTo))}</p>}
    </div>
  );
}

/** What the numbers in the chart mean, the alarms with who saw them, the notes. */
export function PaperTail({ folder }: { readonly folder: FiringFolder }) {
  const { firing, alarms, notes } = folder;
  const budget = paperBudget(firing.schedule.segments.length, firing.pieces.length);
  const marks = marksForPaper(firingMarks(firing.judgement.events, alarms), budget.marks);
  const seen = forPaper(alarms, budget.alarms);
  const kept = forPaper(notes, budget.notes);
  const texts = textsForPaper(
    kept.shown.map((note) => note.text),
    budget.noteCharacters,
  );
  return (
    <div class="paper-only paper-tail">
      <h2>{firingWords.events}</h2>
      <ol class="paper-marks">
        {marks.shown.map((mark) => (
          <li key={`${mark.at}${mark.words}`}>
            {timeOfDay(mark.at)} {mark.words}
          </li>
        ))}
      </ol>
      <More count={marks.more} />
      <h2>{firingWords.alarms}</h2>
      {alarms.length === 0 && <p>{firingWords.noAlarms}</p>}
      <ul>
        {seen.shown.map((alarm) => (
          <li key={alarm.id}>
            {`${timeOfDay(alarm.raisedAt)} ${alarm.title}. ${alarm.message}. ${firingWords.alarmHeads.over}: ${overText(alarm)}. ${firingWords.alarmHeads.seen}: ${seenText(alarm)}.`}
          </li>
        ))}
      </ul>
      <More count={seen.more} />
      {notes.length > 0 && <h2>{firingWords.notes}</h2>}
      <ul>
        {kept.shown.map((note, index) => (
          <li key={note.id}>
            {[dayAndTime(note.at), note.by, texts[index]?.text ?? '']
              .filter((part) => part !== '')
              .join(' · ')}
            {texts[index]?.cut && ` ${paperWords.cut}`}
          </li>
        ))}
      </ul>
      <More count={kept.more} />
    </div>
  );
}

function More({ count }: { readonly count: number }) {
  return count === 0 ? null : <p>{paperWords.more(count)}</p>;
}

export function PaperFoot() {
  const { feed } = useShell();
  const shop = feed.state.value?.shop.settings.name ?? '';
  return (
    <footer class="paper-only paper-foot">
      <p>{words('en').caution}</p>
      <p>{paperWords.printed(dayAndTime(feed.now.value), shop)}</p>
    </footer>
  );
}
