import type { GasFurnaceNow, GasSupplyNow } from '../../hub/contract/gas.ts';
import { temperature } from '../words/format.ts';
import { gasWords } from '../words/gas.ts';
import { Bar } from './bar.tsx';
import {
  along,
  contentsEnd,
  flowText,
  hoursEnd,
  hoursText,
  kilowattText,
  massRange,
  massText,
  pressureEnd,
  pressureText,
  type Units,
} from './figures.ts';

/** One furnace: pressure against its band, flow, heat. */
export function FurnaceGasNow({
  furnace,
  units,
}: {
  readonly furnace: GasFurnaceNow;
  readonly units: Units;
}) {
  const { name, gas, pressurePascals, regime, kilogramsPerHour, kilowattsNet, hasPressure, trouble } =
    furnace;
  const end = pressureEnd(furnace);
  const { lowPascals, highPascals } = gas;
  const band =
    lowPascals === null && highPascals === null
      ? null
      : { from: along(lowPascals ?? 0, end), to: along(highPascals ?? end, end) };
  const bandText =
    band === null
      ? gasWords.noBand
      : `${pressureText(lowPascals ?? 0, units)} – ${pressureText(highPascals, units)}`;
  const shown = pressureText(pressurePascals, units);
  return (
    <article class="gas-card">
      <h3>{name}</h3>
      {trouble !== null && <p class="gas-told">{gasWords.trouble}</p>}
      {!hasPressure && <p>{gasWords.noPressure}</p>}
      <div class="gas-figure">
        <p class="gas-name">{gasWords.pressure}</p>
        <p class="gas-value">{shown}</p>
      </div>
      <Bar
        label={`${gasWords.pressure} ${shown}, ${gasWords.band} ${bandText}`}
        band={band}
        value={pressurePascals === null ? null : along(pressurePascals, end)}
      />
      <p class="gas-small">
        {gasWords.band}: {bandText}
      </p>
      <dl class="gas-pairs">
        <dt>{gasWords.flow}</dt>
        <dd>
          {flowText(kilogramsPerHour, units)}
          {regime !== null && <span class="gas-small"> {gasWords.regime[regime]}</span>}
        </dd>
        {furnace.scaleKilogramsPerHour !== null && <dt>{gasWords.byScale}</dt>}
        {furnace.scaleKilogramsPerHour !== null && (
          <dd>{massText(Math.max(0, furnace.scaleKilogramsPerHour), units)}/h</dd>
        )}
        <dt>{gasWords.heat}</dt>
        <dd>
          {kilowattText(kilowattsNet)}
          {kilowattsNet !== null && ` ${gasWords.net}`}
        </dd>
      </dl>
    </article>
  );
}

interface SupplyProps {
  readonly supply: GasSupplyNow;
  readonly name: string;
  readonly units: Units;
}

/** One supply: what is left and for how long, each as a range. */
export function SupplyNow({ supply, name, units }: SupplyProps) {
  const { contents, contentsFrom, fullKilograms } = supply;
  const end = contentsEnd(supply);
  const from = contentsFrom === null ? '' : contentsFrom === 'scale' ? gasWords.scale : gasWords.noted;
  return (
    <article class="gas-card">
      <h3>{name}</h3>
      {contents === null ? (
        <p>{gasWords.nobody}</p>
      ) : (
        <>
          <div class="gas-figure">
            <p class="gas-name">{gasWords.left}</p>
            <p class="gas-value">{massText(contents.value, units)}</p>
          </div>
          <Bar
            label={`${gasWords.left} ${massRange(contents, units)}`}
            range={{ from: along(contents.low, end), to: along(contents.high, end) }}
            value={along(contents.value, end)}
          />
          <p class="gas-small">
            {massRange(contents, units)}, {from}
            {fullKilograms !== null && `, ${gasWords.full(massText(fullKilograms, units))}`}
          </p>
        </>
      )}
      {contentsFrom === 'counted' && supply.unknownSeconds > 60 && (
        <p class="gas-small">{gasWords.blind(hoursText(supply.unknownSeconds / 3600))}</p>
      )}
      <Endurance supply={supply} units={units} />
      <dl class="gas-pairs">
        {supply.cylinderPascals !== null && <dt>{gasWords.cylinder}</dt>}
        {supply.cylinderPascals !== null && <dd>{pressureText(supply.cylinderPascals, units)}</dd>}
        {supply.wallCelsius !== null && <dt>{gasWords.wall}</dt>}
        {supply.wallCelsius !== null && <dd>{temperature(supply.wallCelsius, units.displayUnit)}</dd>}
      </dl>
    </article>
  );
}

function Endurance({ supply, units }: Omit<SupplyProps, 'name'>) {
  const { endurance } = supply;
  if (endurance === null) return null;
  const { lowHours, valueHours, highHours, drawFrom, limitedBy, kilogramsPerHour } = endurance;
  const end = hoursEnd(supply);
  const range = gasWords.hours(hoursText(lowHours), hoursText(highHours));
  return (
    <>
      <div class="gas-figure">
        <p class="gas-name">{gasWords.lasts}</p>
        <p class="gas-value">{range}</p>
      </div>
      <Bar
        label={`${gasWords.lasts} ${range}`}
        range={{ from: along(lowHours, end), to: along(highHours, end) }}
        value={along(valueHours, end)}
      />
      <p class="gas-small">
        {gasWords.about(hoursText(valueHours))} {gasWords.draw[drawFrom]} ({massText(kilogramsPerHour, units)}
        /h). {gasWords.limited[limitedBy]}
      </p>
    </>
  );
}
