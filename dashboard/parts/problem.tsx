import { ApiError } from '../api/error.ts';
import { partWords } from '../words/parts.ts';
import { Shape } from './shape.tsx';

/** What went wrong, in words, with the hub's list of faults and the stable code. Announced when it appears. */
export function ProblemNote({ error }: { readonly error: unknown }) {
  if (error === null || error === undefined) return null;
  const { title, detail, faults, code } = describe(error);
  return (
    <div class="problem" role="alert">
      <Shape of="warning" />
      <div>
        <p class="problem-title">{title}</p>
        <p>{detail}</p>
        {faults.length > 0 && (
          <ul>
            {faults.map((fault) => (
              <li key={fault}>{fault}</li>
            ))}
          </ul>
        )}
        {code !== '' && <p class="problem-code">{partWords.problemCode(code)}</p>}
      </div>
    </div>
  );
}

interface Description {
  readonly title: string;
  readonly detail: string;
  readonly faults: readonly string[];
  readonly code: string;
}

function describe(error: unknown): Description {
  const title = partWords.problemTitle;
  if (!(error instanceof ApiError)) {
    return { title, detail: error instanceof Error ? error.message : String(error), faults: [], code: '' };
  }
  switch (error.kind) {
    case 'hub-unreachable':
      return { title, detail: partWords.notReached, faults: [], code: error.code };
    case 'answer-not-understood':
      return { title, detail: partWords.notUnderstood, faults: [error.message], code: error.code };
    case 'refused':
      return {
        title: error.problem?.title ?? title,
        detail: error.problem?.detail ?? '',
        faults: (error.problem?.errors ?? []).map((fault) => `${fault.path}: ${fault.message}`),
        code: error.code,
      };
    default:
      return error.kind satisfies never;
  }
}
