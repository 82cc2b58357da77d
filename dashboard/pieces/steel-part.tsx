import type { SteelSummary } from '../../hub/contract/compute/steels.ts';
import { SelectField, TextField } from '../parts/field.tsx';
import { useAnswer } from '../parts/use-answer.ts';
import { useShell } from '../shell.ts';
import { pieceFormWords } from '../words/pieces.ts';
import type { PieceTexts } from './piece-form.ts';
import { SteelField } from './steel-field.tsx';

interface SteelPartProps {
  readonly texts: PieceTexts;
  readonly set: (change: Partial<PieceTexts>) => void;
  readonly steels: readonly SteelSummary[];
  readonly fault: (path: string) => string | undefined;
}

/** What the piece is made of: a steel, a certificate of its bar where the shop keeps one, the shop's own name. */
export function SteelPart({ texts, set, steels, fault }: SteelPartProps) {
  const { api } = useShell();
  const { grade, certificateId } = texts;
  const { answer } = useAnswer(grade ?? '', () =>
    grade === null ? Promise.resolve([]) : api.steels.listCertificates(grade),
  );
  const certificates = answer.state === 'here' ? answer.value : [];
  const choices = certificates.map(({ id, heatNumber }) => ({ value: id, label: heatNumber }));
  const isKnown = certificateId === '' || choices.some(({ value }) => value === certificateId);
  return (
    <>
      {texts.composition !== null && <p class="aside">{pieceFormWords.composition}</p>}
      <SteelField
        steels={steels}
        chosen={grade}
        onChoose={(id) => set({ grade: id, certificateId: '', composition: null })}
        error={fault('steel.grade')}
      />
      {(choices.length > 0 || !isKnown) && (
        <SelectField
          label={pieceFormWords.certificate}
          value={certificateId}
          options={[
            { value: '', label: pieceFormWords.noCertificate },
            ...choices,
            ...(isKnown ? [] : [{ value: certificateId, label: certificateId }]),
          ]}
          onChange={(id) => set({ certificateId: id, composition: null })}
          error={fault('steel.certificateId')}
        />
      )}
      <TextField
        label={pieceFormWords.steelTitle}
        hint={pieceFormWords.steelTitleHint}
        value={texts.steelTitle}
        onChange={(steelTitle) => set({ steelTitle })}
        maxLength={80}
        error={fault('steel.title')}
      />
    </>
  );
}
