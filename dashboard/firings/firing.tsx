import '../parts/sheets.css';
import './firings.css';
import './paper-chart.css';
import './print.css';
import { useState } from 'preact/hooks';
import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import { Button, LinkButton } from '../parts/button.tsx';
import { Page } from '../parts/page.tsx';
import { ProblemNote } from '../parts/problem.tsx';
import { hrefTo } from '../router.ts';
import { Basis } from '../schedules/basis.tsx';
import { useShell } from '../shell.ts';
import { firingWords } from '../words/firings.ts';
import { Export } from './export.tsx';
import { FiringFacts, RunningNow } from './facts.tsx';
import { FiringCurves } from './firing-curves.tsx';
import { Alarms, Events } from './happenings.tsx';
import { Notes } from './notes.tsx';
import { PaperFoot, PaperHead, PaperTail } from './paper.tsx';
import { paperBudget } from './paper-list.ts';
import { PaperPieces } from './paper-pieces.tsx';
import { Beside, PieceFindings } from './piece-findings.tsx';
import { SegmentTable } from './segment-table.tsx';
import { TitleForm } from './title-form.tsx';
import { Trust } from './trust.tsx';
import { coreSeries, useFindings } from './use-findings.ts';
import { type FiringFolder, useFiring } from './use-firing.ts';

/** A firing's page: what was planned, what was measured, what came of it. Mount anew for another id. */
export function FiringPage({ id }: { readonly id: string }) {
  const { folder, error, reload } = useFiring(id);
  if (folder === null) {
    return (
      <Page title={firingWords.facts} actions={<Ways />}>
        {error ? <ProblemNote error={error} /> : <p role="status">{firingWords.asking}</p>}
      </Page>
    );
  }
  return <Known folder={folder} error={error} reload={reload} />;
}

function Ways() {
  return (
    <>
      <LinkButton href={hrefTo({ view: 'wall' })}>{firingWords.toWall}</LinkButton>
      <LinkButton href={hrefTo({ view: 'firings' })}>{firingWords.toFirings}</LinkButton>
    </>
  );
}

interface KnownProps {
  readonly folder: FiringFolder;
  readonly error: unknown;
  readonly reload: () => void;
}

function Known({ folder, error, reload }: KnownProps) {
  const { feed } = useShell();
  const { firing, alarms, notes } = folder;
  const findings = useFindings(firing);
  const known = findings.state === 'here' ? findings.value : null;
  const [edits, setEdits] = useState(false);
  const [chosen, setChosen] = useState<DisplayUnit | null>(null);
  const unit = chosen ?? feed.state.value?.shop.settings.displayUnit ?? 'Cel';
  const title = firing.title || firing.schedule.name;
  return (
    <div class={firing.status === 'running' ? 'firing-running' : undefined}>
      <Page title={title} actions={<Ways />}>
        <PaperHead firing={firing} />
        <div class="firing-section screen-only">
          {firing.simulated && (
            <p>
              <strong class="simulated">{firingWords.simulated}</strong> {firingWords.simulatedLong}
            </p>
          )}
          {feed.blind.value && <p role="status">{firingWords.notCurrent}</p>}
          {/* Without the hub the band at the top says it, and louder. */}
          <ProblemNote error={feed.blind.value ? null : error} />
        </div>
        <RunningNow firing={firing} unit={unit} />
        <FiringFacts firing={firing} unit={unit} />
        <div class="firing-section">
          {firing.note !== '' && <p class="note-text firing-note">{firing.note}</p>}
          <p class="screen-only">
            <Button onPress={() => setEdits(true)}>{firingWords.edit}</Button>
          </p>
        </div>
        <FiringCurves folder={folder} unit={unit} cores={coreSeries(known?.pieces ?? [])} />
        <PieceFindings firing={firing} findings={findings} unit={unit} />
        <SegmentTable firing={firing} unit={unit} />
        {known && (
          <PaperPieces
            findings={known}
            unit={unit}
            most={paperBudget(firing.schedule.segments.length).pieces}
          />
        )}
        <Beside findings={findings} />
        <Trust firing={firing} unit={unit} />
        {firing.schedule.basis && (
          <div class="firing-section">
            <Basis basis={firing.schedule.basis} segments={firing.schedule.segments} />
          </div>
        )}
        <PaperTail folder={folder} />
        <div class="screen-only firing-rest">
          <Alarms alarms={alarms} />
          <Events firing={firing} />
          <Notes firingId={firing.id} notes={notes} onAdded={reload} />
          <Export firingId={firing.id} unit={unit} onUnit={setChosen} />
        </div>
        <PaperFoot />
        {edits && <TitleForm firing={firing} onClose={() => setEdits(false)} onSaved={reload} />}
      </Page>
    </div>
  );
}
