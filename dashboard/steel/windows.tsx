import type { z } from 'zod';
import type { Standing } from '../../hub/contract/compute/estimate.ts';
import type { SteelWindowsAnswer, StepName, StepWindow } from '../../hub/contract/compute/steels.ts';
import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import { type Column, Table } from '../parts/table.tsx';
import { rate, temperature, unbroken } from '../words/format.ts';
import { STEP_WORDS, windowWords } from '../words/steel.ts';
import { Known } from './known.tsx';
import { inOrder } from './scale-rows.ts';
import { uncertaintyText, windowText } from './shown.ts';

export interface WindowsProps {
  readonly answer: z.infer<typeof SteelWindowsAnswer>;
  readonly never: readonly StepName[];
  readonly unit: DisplayUnit;
}

/** What a number rests on that nobody looked up. */
const WEAK: readonly Standing[] = ['from-memory', 'common-practice'];

/** The window of every step with where it comes from; how many rest on memory or habit is said first. */
export function Windows({ answer, never, unit }: WindowsProps) {
  const { windows, outsideLimits, flags } = answer;
  const weak = windows.filter(({ from }) => WEAK.includes(from.standing)).length;
  return (
    <>
      {weak > 0 && <p class="steel-say">{windowWords.memoryHead(weak, windows.length)}</p>}
      {outsideLimits.length > 0 && (
        <p>
          {windowWords.outside(
            outsideLimits
              .map(({ element, percent, low, high }) => windowWords.outsideOne(element, percent, low, high))
              .join(', '),
          )}
        </p>
      )}
      {flags.map(({ code, message }) => (
        <p key={code}>{message}</p>
      ))}
      <Table
        caption={windowWords.caption}
        hideCaption
        columns={columns(unit)}
        rows={[...inOrder(windows)].reverse()}
        rowKey={({ step }) => step}
        empty={windowWords.empty}
      />
      {unit !== 'Cel' && <p class="aside">{windowWords.asWritten}</p>}
      {never.length > 0 && (
        <p>
          <strong>{windowWords.never(never.map((step) => STEP_WORDS[step].toLowerCase()).join(', '))}</strong>
        </p>
      )}
    </>
  );
}

function columns(unit: DisplayUnit): readonly Column<StepWindow>[] {
  return [
    { key: 'step', head: windowWords.step, cell: ({ step }) => STEP_WORDS[step] },
    {
      key: 'window',
      head: windowWords.window,
      cell: (window) => <strong class="steel-window">{unbroken(windowText(window, unit))}</strong>,
    },
    {
      key: 'give',
      head: windowWords.give,
      cell: ({ uncertaintyCelsius }) => unbroken(uncertaintyText(uncertaintyCelsius, unit)),
    },
    { key: 'how', head: windowWords.how, cell: (window) => <HowTo text={howTo(window, unit)} /> },
    { key: 'from', head: windowWords.from, cell: ({ from }) => <Known from={from} /> },
  ];
}

function HowTo({ text }: { readonly text: string }) {
  return text === '' ? null : <span class="steel-how">{text}</span>;
}

/** Hold, cooling and remark of a step, in one line. */
export function howTo(window: StepWindow, unit: DisplayUnit): string {
  const { step, holdHours, maxCoolingCelsiusPerHour: cooling, coolToCelsius: coolTo, note } = window;
  const [least, most] = holdHours ?? [];
  const parts = [
    step === 'forge' ? windowWords.forge : '',
    least !== undefined && most !== undefined ? windowWords.hold(least, most) : '',
    coolingWords(cooling, coolTo, unit),
    note ?? '',
  ];
  return unbroken(parts.filter((part) => part !== '').join('; '));
}

function coolingWords(cooling: number | undefined, coolTo: number | undefined, unit: DisplayUnit): string {
  if (cooling === undefined) return '';
  if (coolTo === undefined) return windowWords.coolAny(rate(cooling, unit));
  return windowWords.cool(rate(cooling, unit), temperature(coolTo, unit));
}
