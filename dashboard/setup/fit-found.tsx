import type { FurnaceFitTried } from '../../hub/contract/furnace-fit.ts';
import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import { Button } from '../parts/button.tsx';
import { ProblemNote } from '../parts/problem.tsx';
import { Shape } from '../parts/shape.tsx';
import type { Action } from '../parts/use-action.ts';
import { fitWords } from '../words/setup-fit.ts';
import { residualText } from './fit-form.ts';

interface FitFoundProps {
  readonly found: FurnaceFitTried;
  readonly unit: DisplayUnit;
  readonly press: Action;
  readonly onKeep: () => void;
}

/** What a fit found, its residual in plain sight, and what speaks against keeping it. */
export function FitFound({ found: { answer, flags, refusal }, unit, press, onKeep }: FitFoundProps) {
  const facts = [
    [fitWords.residual, residualText(answer.rmsCelsius, unit)],
    [fitWords.worst, residualText(answer.worstCelsius, unit)],
    [fitWords.emissivity, answer.shown.emissivity],
    [fitWords.film, answer.shown.filmWattsPerSquareMetreKelvin],
    [fitWords.points, String(answer.pointsUsed)],
    [fitWords.source, answer.source],
  ] as const;
  return (
    <section class="setup-part" aria-labelledby="fit-found" role="status">
      <h3 id="fit-found">{fitWords.found}</h3>
      <dl class="setup-facts">
        {facts.map(([name, value]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
      {flags.length > 0 && (
        <div class="problem">
          <Shape of="warning" />
          <div>
            <p class="problem-title">{fitWords.against}</p>
            <ul>
              {flags.map(({ code, message }) => (
                <li key={code}>{message}</li>
              ))}
            </ul>
          </div>
        </div>
      )}
      {refusal ? (
        <div class="problem">
          <Shape of="warning" />
          <div>
            <p class="problem-title">{fitWords.refused}</p>
            <p>{refusal.message}</p>
          </div>
        </div>
      ) : (
        <div class="form-acts">
          <Button tone="main" busy={press.busy} onPress={onKeep}>
            {fitWords.keep}
          </Button>
        </div>
      )}
      <ProblemNote error={press.error} />
    </section>
  );
}
