import { useMemo, useState } from 'preact/hooks';
import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import { FiringChart } from '../charts/firing-chart.tsx';
import type { ChartSeries } from '../charts/types.ts';
import { useShell } from '../shell.ts';
import { firingWords } from '../words/firings.ts';
import { type CurveChannel, curveChannels } from './channels.ts';
import { firingMarks } from './marks.ts';
import { PaperChart } from './paper-chart.tsx';
import { marksForPaper, paperBudget } from './paper-list.ts';
import { curveSeries, firingWindow } from './picture.ts';
import { Strips } from './strips.tsx';
import { useCurves } from './use-curves.ts';
import type { FiringFolder } from './use-firing.ts';

/** Now-line and open gaps of a running firing move at this pace. */
const PACE_MS = 2_000;

interface CurvesProps {
  readonly folder: FiringFolder;
  readonly unit: DisplayUnit;
  /** Computed middles of the pieces. */
  readonly cores: readonly ChartSeries[];
}

/** The chart of a firing, with a switch for each curve, and its twin for paper. */
export function FiringCurves({ folder, unit, cores }: CurvesProps) {
  const { feed } = useShell();
  const { firing, alarms } = folder;
  const [switched, setSwitched] = useState<ReadonlyMap<string, boolean>>(new Map());
  const channels = curveChannels(firing, feed.state.value?.channels ?? new Map());
  const isOn = (channel: CurveChannel) => switched.get(channel.id) ?? channel.watched;
  const shown = channels.filter(isOn);
  const curves = useCurves(firing, shown);
  const isRunning = firing.status === 'running';
  const now = Math.floor(feed.now.value / PACE_MS) * PACE_MS;
  const series = useMemo(
    () => [
      ...curves.flatMap(({ channel, series: known }) =>
        known && channel.quantity === 'temperature'
          ? [curveSeries(channel, known, isRunning ? now : null)]
          : [],
      ),
      ...cores,
    ],
    [
      cores.map(({ label, readings }) => `${label}${readings.length}`).join(),
      isRunning ? now : 0,
      shown.map(({ id, label }) => `${id}${label}`).join(),
      ...curves.map(({ series: known }) => known),
    ],
  );
  const marks = useMemo(
    () => firingMarks(firing.judgement.events, alarms),
    [firing.judgement.events, alarms],
  );
  const picture = { unit, plan: firing.judgement.plan, series, marks, whole: firingWindow(firing, now) };
  return (
    <section class="firing-section" aria-labelledby="chart-head">
      <h2 id="chart-head" class="screen-only">
        {firingWords.chart}
      </h2>
      <div class="screen-only firing-chart">
        <FiringChart
          {...picture}
          {...(isRunning ? { now } : {})}
          name={firingWords.chartName(firing.title)}
          interactive
        />
      </div>
      <PaperChart
        {...picture}
        marks={
          marksForPaper(marks, paperBudget(firing.schedule.segments.length, firing.pieces.length).marks).shown
        }
        name={firingWords.chartName(firing.title)}
      />
      <div class="screen-only">
        <CurveSwitches
          channels={channels}
          isOn={isOn}
          onSwitch={(id, on) => setSwitched(new Map(switched).set(id, on))}
        />
        {curves.some((curve) => curve.series === null) && <p role="status">{firingWords.loading}</p>}
        {curves.some((curve) => curve.series?.thinned) && <p class="aside">{firingWords.thinned}</p>}
        <Strips curves={curves} window={picture.whole} />
      </div>
    </section>
  );
}

interface SwitchesProps {
  readonly channels: readonly CurveChannel[];
  readonly isOn: (channel: CurveChannel) => boolean;
  readonly onSwitch: (id: string, on: boolean) => void;
}

function CurveSwitches({ channels, isOn, onSwitch }: SwitchesProps) {
  return (
    <fieldset class="switches">
      <legend>{firingWords.curves}</legend>
      {channels.map((channel) => (
        <label key={channel.id} class="switch">
          <input
            type="checkbox"
            checked={isOn(channel)}
            onChange={(event) => onSwitch(channel.id, event.currentTarget.checked)}
          />
          {channel.watched ? firingWords.watchedChannel(channel.label) : channel.label}
        </label>
      ))}
    </fieldset>
  );
}
