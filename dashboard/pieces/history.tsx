import { useState } from 'preact/hooks';
import type { Observation } from '../../hub/contract/observation.ts';
import type { HistoryEntry, PieceHistory } from '../../hub/contract/piece.ts';
import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import { attachmentAddress } from '../api/piece-client.ts';
import { VerdictMark } from '../firings/verdict-mark.tsx';
import { Button, LinkButton } from '../parts/button.tsx';
import { Confirm } from '../parts/confirm.tsx';
import { hrefTo } from '../router.ts';
import { useShell } from '../shell.ts';
import { temperature } from '../words/format.ts';
import { pieceWords } from '../words/pieces.ts';
import { KIND_WORDS, seenWords } from '../words/pieces-seen.ts';
import { dayAndTime } from '../words/time.ts';
import { saidOf } from './said.ts';

interface HistoryProps {
  readonly history: PieceHistory;
  readonly unit: DisplayUnit;
  /** Name of a step of this piece's route; empty: it has no such step (any more). */
  readonly nameOf: (stepId: string | null) => string;
  readonly reload: () => void;
}

/** Everything that happened to the piece, in order. */
export function History({ history, unit, nameOf, reload }: HistoryProps) {
  const { api } = useShell();
  const [leaving, setLeaving] = useState<Observation | null>(null);
  return (
    <section class="piece-part" aria-labelledby="piece-history-head">
      <h2 id="piece-history-head">{pieceWords.history}</h2>
      {history.entries.length === 0 && <p>{pieceWords.noHistory}</p>}
      <ol class="plain-list history">
        {history.entries.map((entry) => (
          <li key={keyOf(entry)}>
            <time class="quiet">{dayAndTime(entry.at)}</time>
            {entry.kind === 'firing' ? (
              <FiringEntry entry={entry} unit={unit} nameOf={nameOf} />
            ) : (
              <Seen
                observation={entry.observation}
                unit={unit}
                stepName={nameOf(entry.observation.stepId)}
                onRemove={() => setLeaving(entry.observation)}
              />
            )}
          </li>
        ))}
      </ol>
      {leaving && (
        <Confirm
          title={pieceWords.removeTitle}
          words={`${saidOf(leaving, unit)}. ${pieceWords.removeLong}`}
          yes={pieceWords.remove}
          no={pieceWords.keep}
          act={() => api.pieces.removeObservation(leaving.id)}
          onClose={() => setLeaving(null)}
          onDone={reload}
        />
      )}
    </section>
  );
}

function keyOf(entry: HistoryEntry): string {
  return entry.kind === 'firing' ? entry.firing.id : entry.observation.id;
}

interface FiringEntryProps extends Pick<HistoryProps, 'unit' | 'nameOf'> {
  readonly entry: Extract<HistoryEntry, { kind: 'firing' }>;
}

function FiringEntry({ entry, unit, nameOf }: FiringEntryProps) {
  const { firing, as, verdict } = entry;
  const peak = firing.peakCelsius === null ? '' : `, ${temperature(firing.peakCelsius, unit)}`;
  return (
    <div class="history-entry">
      <p>
        <a class="firing-link" href={hrefTo({ view: 'firing', id: firing.id })}>
          {firing.title || firing.scheduleName}
        </a>
        <span class="quiet">
          {[nameOf(as.routeStepId), firing.furnaceName].filter((said) => said !== '').join(', ')}
          {peak}
        </span>
      </p>
      {firing.status === 'running' ? (
        <p class="tag">{pieceWords.running}</p>
      ) : (
        <p>
          <VerdictMark verdict={verdict ?? firing.verdict} />
          {verdict === null && <span class="tag">{pieceWords.wholeFiring}</span>}
        </p>
      )}
    </div>
  );
}

interface SeenProps {
  readonly observation: Observation;
  readonly unit: DisplayUnit;
  readonly stepName: string;
  readonly onRemove: () => void;
}

function Seen({ observation, unit, stepName, onRemove }: SeenProps) {
  const { seen, by, note } = observation;
  const said = saidOf(observation, unit);
  const about = [stepName, by].filter((each) => each !== '').join(', ');
  return (
    <div class="history-entry">
      <p>
        <strong>{KIND_WORDS[seen.kind]}: </strong>
        <span class="history-said">{said}</span>
      </p>
      {seen.kind === 'magnet' && <MagnetStanding seen={seen} />}
      {seen.kind === 'attachment' && <Attached seen={seen} />}
      {note !== '' && <p class="history-said">{note}</p>}
      <p class="history-foot">
        {about !== '' && <span class="quiet">{about}</span>}
        <Button name={pieceWords.removeName(said)} onPress={onRemove}>
          {pieceWords.remove}
        </Button>
      </p>
    </div>
  );
}

type SeenOf<K extends Observation['seen']['kind']> = Extract<Observation['seen'], { kind: K }>;

function MagnetStanding({ seen }: { readonly seen: SeenOf<'magnet'> }) {
  if (seen.measuredCelsius === null) return null;
  return (
    <p class="quiet">
      {seenWords.furnaceNotSteel}
      {seen.expected && ` ${seenWords.expectedFrom(seen.expected.formula, seen.expected.source)}`}
    </p>
  );
}

function Attached({ seen }: { readonly seen: SeenOf<'attachment'> }) {
  const address = attachmentAddress(seen.attachmentId);
  return (
    <>
      {seen.contentType.startsWith('image/') && (
        <img class="history-photo" src={address} alt={seenWords.photoOf(seen.fileName)} loading="lazy" />
      )}
      <LinkButton href={address} download={seen.fileName}>
        {seenWords.open(seen.fileName)}
      </LinkButton>
    </>
  );
}
