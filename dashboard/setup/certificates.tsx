import { useState } from 'preact/hooks';
import type { SteelSummary } from '../../hub/contract/compute/steels.ts';
import type { MillCertificate } from '../../hub/contract/own-steel.ts';
import { Button } from '../parts/button.tsx';
import { Confirm } from '../parts/confirm.tsx';
import { SelectField } from '../parts/field.tsx';
import { ProblemNote } from '../parts/problem.tsx';
import { type Column, Table } from '../parts/table.tsx';
import { useAnswer } from '../parts/use-answer.ts';
import { useShell } from '../shell.ts';
import { compositionText } from '../steel/composition.ts';
import { setupWords } from '../words/setup.ts';
import { certificateWords, ownSteelWords } from '../words/setup-steels.ts';
import { CertificateDialog } from './certificate-dialog.tsx';

/** Certificates of one steel at a time, of a grade as of an own steel. */
export function Certificates({ steels }: { readonly steels: readonly SteelSummary[] }) {
  const { api } = useShell();
  const [steel, setSteel] = useState(
    steels.find(({ origin }) => origin === 'own')?.id ?? steels[0]?.id ?? '',
  );
  const { answer, reload } = useAnswer(steel, () => api.steels.listCertificates(steel));
  const [edited, setEdited] = useState<MillCertificate | 'new' | null>(null);
  const [leaving, setLeaving] = useState<MillCertificate | null>(null);
  const title = steels.find(({ id }) => id === steel)?.title ?? steel;
  return (
    <section class="setup-part" aria-labelledby="certificates-head">
      <h2 id="certificates-head">{certificateWords.head}</h2>
      <p class="aside">{certificateWords.long}</p>
      <SelectField
        label={certificateWords.steel}
        value={steel}
        options={steels.map((each) => ({ value: each.id, label: each.title }))}
        onChange={setSteel}
      />
      {answer.state === 'failed' && <ProblemNote error={answer.error} />}
      {answer.state === 'here' && (
        <Table
          caption={certificateWords.caption(title)}
          columns={columnsWith(setEdited, setLeaving)}
          rows={answer.value}
          rowKey={(certificate) => certificate.id}
          empty={certificateWords.empty}
        />
      )}
      <p>
        <Button onPress={() => setEdited('new')}>{certificateWords.add}</Button>
      </p>
      {edited !== null && (
        <CertificateDialog
          steel={steel}
          certificate={edited === 'new' ? null : edited}
          onClose={() => setEdited(null)}
          onDone={reload}
        />
      )}
      {leaving && (
        <Confirm
          title={certificateWords.putAwayTitle(leaving.heatNumber)}
          words={certificateWords.putAwayLong}
          yes={setupWords.putAway}
          no={setupWords.keep}
          act={() => api.steels.putCertificateAway(leaving.id)}
          onClose={() => setLeaving(null)}
          onDone={reload}
        />
      )}
    </section>
  );
}

function columnsWith(
  edit: (certificate: MillCertificate) => void,
  leave: (certificate: MillCertificate) => void,
): Column<MillCertificate>[] {
  return [
    { key: 'heat', head: certificateWords.heat, cell: ({ heatNumber }) => heatNumber },
    { key: 'date', head: certificateWords.date, cell: ({ date }) => date ?? setupWords.none },
    { key: 'made', head: ownSteelWords.composition, cell: ({ composition }) => compositionText(composition) },
    { key: 'note', head: certificateWords.note, cell: ({ note }) => note || setupWords.none },
    {
      key: 'acts',
      head: setupWords.actions,
      cell: (certificate) => (
        <div class="form-acts row-acts">
          <Button name={certificateWords.edit(certificate.heatNumber)} onPress={() => edit(certificate)}>
            {setupWords.edit}
          </Button>
          <Button name={certificateWords.putAway(certificate.heatNumber)} onPress={() => leave(certificate)}>
            {setupWords.putAway}
          </Button>
        </div>
      ),
    },
  ];
}
