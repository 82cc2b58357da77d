import type { MillCertificate } from '../../hub/contract/own-steel.ts';
import { Dialog } from '../parts/dialog.tsx';
import { TextField } from '../parts/field.tsx';
import { useAction } from '../parts/use-action.ts';
import { useShell } from '../shell.ts';
import { setupWords } from '../words/setup.ts';
import { certificateWords } from '../words/setup-steels.ts';
import { FormFrame } from './form-frame.tsx';
import { PercentFields } from './percent-fields.tsx';
import {
  type CertificateTexts,
  type CertificateValue,
  certificateTexts,
  checkCertificate,
} from './steel-form.ts';
import { useTextForm } from './use-text-form.ts';

const NAMES: Readonly<Record<string, string>> = {
  heatNumber: certificateWords.heat,
  date: certificateWords.date,
  note: certificateWords.note,
};

interface CertificateDialogProps {
  /** Id of the steel that it belongs to. */
  readonly steel: string;
  /** Null: a new one. */
  readonly certificate: MillCertificate | null;
  readonly onClose: () => void;
  readonly onDone: () => void;
}

export function CertificateDialog({ steel, certificate, onClose, onDone }: CertificateDialogProps) {
  const { api } = useShell();
  const press = useAction();
  const form = useTextForm<CertificateTexts, CertificateValue>(
    certificateTexts(certificate),
    checkCertificate,
  );
  const { texts, set, fault } = form;
  const send = (value: CertificateValue) =>
    press.run(async () => {
      if (certificate) await api.steels.changeCertificate(certificate.id, value);
      else await api.steels.createCertificate(steel, value);
      onDone();
      onClose();
    });
  return (
    <Dialog
      title={certificate ? certificateWords.edit(certificate.heatNumber) : certificateWords.add}
      onClose={onClose}
      closeWord={setupWords.cancel}
    >
      <FormFrame
        onSubmit={(event) => form.submit(event, send)}
        press={press}
        listed={form.listed}
        nameOf={(path) => NAMES[path] ?? path.replace('composition.', '')}
        send={certificate ? setupWords.save : certificateWords.addThis}
      >
        <TextField
          label={certificateWords.heat}
          hint={certificateWords.heatHint}
          value={texts.heatNumber}
          onChange={(heatNumber) => set({ heatNumber })}
          maxLength={64}
          error={fault('heatNumber')}
        />
        <TextField
          label={certificateWords.date}
          hint={certificateWords.dateHint}
          value={texts.date}
          onChange={(date) => set({ date })}
          maxLength={10}
          error={fault('date')}
        />
        <PercentFields
          texts={texts.percents}
          onChange={(percents) => set({ percents })}
          fault={fault}
          refusal={press.error}
        />
        <TextField
          label={certificateWords.note}
          value={texts.note}
          onChange={(note) => set({ note })}
          rows={2}
          maxLength={2000}
          error={fault('note')}
        />
      </FormFrame>
    </Dialog>
  );
}
