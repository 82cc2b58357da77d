import type { Piece } from '../../hub/contract/piece.ts';
import { useAnswer } from '../parts/use-answer.ts';
import { useShell } from '../shell.ts';
import { amount } from '../words/format.ts';
import { piecesWords, pieceWords } from '../words/pieces.ts';
import { day } from '../words/time.ts';
import { sectionSaid, steelSaid, titlesOf } from './said.ts';
import { dueStep, stepName } from './step-name.ts';

/** What the piece is, at a glance. */
export function PieceFacts({ piece }: { readonly piece: Piece }) {
  const { api, feed } = useShell();
  const { answer } = useAnswer('steels', () => api.compute.listSteels());
  const settings = feed.state.value?.shop.settings;
  const titles = titlesOf(answer.state === 'here' ? answer.value : []);
  const due = dueStep(piece);
  const { massKilograms } = piece.section;
  const mass = massKilograms !== null && settings ? amount(massKilograms, 'mass', settings) : null;
  const { facts } = pieceWords;
  return (
    <>
      <dl class="facts">
        <Fact name={facts.due} said={due ? stepName(due) : piecesWords.nothingDue} />
        <Fact name={facts.steel} said={steelSaid(piece, titles)} />
        <Fact name={facts.section} said={sectionSaid(piece.section)} />
        {mass && <Fact name={facts.mass} said={`${mass.number} ${mass.unit}`} />}
        <Fact name={facts.since} said={day(piece.createdAt)} />
      </dl>
      {piece.note !== '' && <p class="piece-note">{piece.note}</p>}
    </>
  );
}

function Fact({ name, said }: { readonly name: string; readonly said: string }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{said}</dd>
    </div>
  );
}
