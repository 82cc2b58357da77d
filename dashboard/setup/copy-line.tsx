import { useState } from 'preact/hooks';
import { Button } from '../parts/button.tsx';
import { startWords } from '../words/setup.ts';

/** A line to copy into a terminal. Over plain HTTP browsers give no clipboard, so it can be selected as well. */
export function CopyLine({ line }: { readonly line: string }) {
  const [said, setSaid] = useState('');
  const copy = () => {
    const kept = navigator.clipboard?.writeText(line) ?? Promise.reject(new Error('clipboard-missing'));
    kept.then(
      () => setSaid(startWords.copied),
      () => setSaid(startWords.copyFailed),
    );
  };
  return (
    <div class="copy-line">
      <textarea
        readOnly
        rows={3}
        spellcheck={false}
        aria-label={startWords.tryLineName}
        value={line}
        onFocus={(event) => event.currentTarget.select()}
      />
      <div class="form-acts">
        <Button onPress={copy}>{startWords.copy}</Button>
        <span role="status">{said}</span>
      </div>
    </div>
  );
}
