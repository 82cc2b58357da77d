import { useRef } from 'preact/hooks';
import { Button } from '../parts/button.tsx';
import type { Faults } from '../parts/faults.ts';
import { Shape } from '../parts/shape.tsx';
import { editorWords } from '../words/schedules.ts';
import { KIND_WORDS } from '../words/segments.ts';
import type { FormAction, ScheduleForm, SegmentForm } from './form.ts';
import { SegmentFields } from './segment-fields.tsx';

interface SegmentListProps {
  readonly form: ScheduleForm;
  /** Faults to show, by path. */
  readonly faults: Faults;
  /** Warnings by segment index. */
  readonly warnings: ReadonlyMap<number, string>;
  readonly act: (action: FormAction) => void;
  /** Says to people who do not see it what a press has done. */
  readonly tell: (words: string) => void;
}

/** The segments in their order, each with its fields, and buttons to move, remove and add. */
export function SegmentList(props: SegmentListProps) {
  const { form, act, tell } = props;
  const head = useRef<HTMLHeadingElement>(null);
  const add = (kind: SegmentForm['kind']) => {
    act({ type: 'add', kind });
    tell(editorWords.added(form.segments.length));
  };
  return (
    <section class="segments" aria-labelledby="segments-head">
      <h2 id="segments-head" ref={head} tabIndex={-1}>
        {editorWords.segments}
      </h2>
      {props.faults.segments && <p class="field-error">{props.faults.segments}</p>}
      <ol class="segment-list">
        {form.segments.map((segment, index) => (
          <SegmentItem
            key={segment.key}
            {...props}
            segment={segment}
            index={index}
            onRemoved={() => head.current?.focus()}
          />
        ))}
      </ol>
      <div class="form-acts">
        <Button onPress={() => add('ramp')}>{editorWords.addRamp}</Button>
        <Button onPress={() => add('soak')}>{editorWords.addSoak}</Button>
        <Button onPress={() => add('cool')}>{editorWords.addCool}</Button>
      </div>
    </section>
  );
}

interface ItemProps extends SegmentListProps {
  readonly segment: SegmentForm;
  readonly index: number;
  /** The pressed button is gone with its segment: the focus must not fall to the top of the page. */
  readonly onRemoved: () => void;
}

function SegmentItem({ form, faults, warnings, act, tell, segment, index, onRemoved }: ItemProps) {
  const warning = warnings.get(index);
  const name = editorWords.segment(index, KIND_WORDS[segment.kind].toLowerCase());
  return (
    <li>
      <fieldset class="segment-item">
        <legend>{name}</legend>
        <SegmentFields
          segment={segment}
          unit={form.unit}
          fault={(field) => faults[`segments.${index}.${field}`]}
          act={act}
        />
        {warning && (
          <p class="segment-warning" role="alert">
            <Shape of="warning" /> {warning}
          </p>
        )}
        <SegmentActs
          index={index}
          last={form.segments.length - 1}
          segment={segment}
          act={act}
          tell={tell}
          onRemoved={onRemoved}
        />
      </fieldset>
    </li>
  );
}

interface ActsProps extends Pick<ItemProps, 'segment' | 'index' | 'act' | 'tell' | 'onRemoved'> {
  readonly last: number;
}

function SegmentActs({ segment, index, last, act, tell, onRemoved }: ActsProps) {
  const move = (by: -1 | 1) => {
    act({ type: 'move', key: segment.key, by });
    tell(editorWords.moved(index + by));
  };
  const remove = () => {
    act({ type: 'remove', key: segment.key });
    tell(editorWords.removed(index));
    onRemoved();
  };
  return (
    <div class="form-acts segment-acts">
      <Button name={editorWords.earlierName(index)} disabled={index === 0} onPress={() => move(-1)}>
        {editorWords.earlier}
      </Button>
      <Button name={editorWords.laterName(index)} disabled={index === last} onPress={() => move(1)}>
        {editorWords.later}
      </Button>
      <Button name={editorWords.removeName(index)} onPress={remove}>
        {editorWords.remove}
      </Button>
    </div>
  );
}
