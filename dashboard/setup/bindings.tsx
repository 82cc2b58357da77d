import { useState } from 'preact/hooks';
import { QUANTITY_FACTS } from '../../hub/contract/quantity.ts';
import type { Binding } from '../../hub/contract/shop.ts';
import { Button } from '../parts/button.tsx';
import { Confirm } from '../parts/confirm.tsx';
import { ProblemNote } from '../parts/problem.tsx';
import { type Column, Table } from '../parts/table.tsx';
import { useAnswer } from '../parts/use-answer.ts';
import { useShell } from '../shell.ts';
import { bindingWords, setupWords } from '../words/setup.ts';
import { BindingDialog } from './binding-dialog.tsx';

/** Foreign topics and what they mean. */
export function Bindings() {
  const { api } = useShell();
  const { answer, reload } = useAnswer('bindings', () => api.setup.listBindings());
  const [adds, setAdds] = useState(false);
  const [leaving, setLeaving] = useState<Binding | null>(null);
  return (
    <>
      <p class="aside">{bindingWords.long}</p>
      {answer.state === 'waiting' && <p role="status">{setupWords.asking}</p>}
      {answer.state === 'failed' && <ProblemNote error={answer.error} />}
      {answer.state === 'here' && (
        <Table
          caption={bindingWords.caption}
          columns={columnsWith(setLeaving)}
          rows={answer.value}
          rowKey={(binding) => binding.id}
          empty={bindingWords.empty}
        />
      )}
      <p>
        <Button onPress={() => setAdds(true)}>{bindingWords.add}</Button>
      </p>
      {adds && <BindingDialog onClose={() => setAdds(false)} onDone={reload} />}
      {leaving && (
        <Confirm
          title={bindingWords.removeTitle(leaving.topic)}
          words={bindingWords.removeLong}
          yes={bindingWords.remove}
          no={setupWords.keep}
          act={() => api.setup.removeBinding(leaving.id)}
          onClose={() => setLeaving(null)}
          onDone={reload}
        />
      )}
    </>
  );
}

function columnsWith(leave: (binding: Binding) => void): Column<Binding>[] {
  return [
    { key: 'topic', head: bindingWords.topic, cell: (binding) => <code>{binding.topic}</code> },
    {
      key: 'what',
      head: bindingWords.what,
      cell: (binding) =>
        `${binding.node ?? bindingWords.nodeFromTopic}/${binding.channel}, ${QUANTITY_FACTS[binding.quantity].label.toLowerCase()} in ${binding.unit}`,
    },
    { key: 'how', head: bindingWords.how, cell: howText },
    {
      key: 'acts',
      head: setupWords.actions,
      cell: (binding) => (
        <Button name={bindingWords.removeName(binding.topic)} onPress={() => leave(binding)}>
          {bindingWords.remove}
        </Button>
      ),
    },
  ];
}

function howText({ decoder, scale, offset }: Binding): string {
  const read = decoder.kind === 'number' ? bindingWords.asNumber : bindingWords.asJson(decoder.valuePointer);
  const scaled = scale === 1 ? '' : ` × ${scale}`;
  const shifted = offset === 0 ? '' : ` ${offset < 0 ? '−' : '+'} ${Math.abs(offset)}`;
  return `${read}${scaled}${shifted}`;
}
