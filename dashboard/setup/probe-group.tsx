import { ApiError } from '../api/error.ts';
import type { FeedState } from '../feed/state.ts';
import { probeWords } from '../words/setup-probe.ts';
import type { ChannelForm } from './channel-fields.tsx';
import { ProbeFields, ProbeFigures } from './probe-fields.tsx';
import { channelsToName, type ProbeTexts, sourceRefusals } from './probe-form.ts';
import { SourceFields } from './probe-source-fields.tsx';

interface ProbeGroupProps {
  readonly form: ChannelForm;
  readonly state: FeedState;
  /** What the hub refused last: what speaks of a field of the probe stands beside it. */
  readonly refusal: unknown;
}

/** The thermocouple of a temperature channel. */
export function ProbeGroup({ form, state, refusal }: ProbeGroupProps) {
  const { probe, node, name } = form.texts;
  const set = (change: Partial<ProbeTexts>) => form.set({ probe: { ...probe, ...change } });
  const fault = (path: string): string | undefined => {
    const own = form.fault(path === '' ? 'probe' : `probe.${path}`);
    return own ?? hubFault(refusal, path);
  };
  const fields = { texts: probe, set, fault };
  const channels = [...state.channels.values()];
  const sender = [...state.nodes.values()].find((each) => each.name === node);
  return (
    <fieldset class="setup-group">
      <legend>{probeWords.head}</legend>
      <p class="aside">{probeWords.long}</p>
      <ProbeFields {...fields} />
      {probe.type !== '' && (
        <>
          <ProbeFigures {...fields} unit={state.shop.settings.displayUnit} />
          <SourceFields
            {...fields}
            emfs={channelsToName(channels, { node, name, quantity: 'emf' })}
            junctions={channelsToName(channels, { node, name, quantity: 'temperature' })}
            refusals={sourceRefusals(sender)}
          />
        </>
      )}
    </fieldset>
  );
}

function hubFault(refusal: unknown, path: string): string | undefined {
  if (!(refusal instanceof ApiError)) return undefined;
  return refusal.fieldError(path === '' ? '/probe' : `/probe/${path.replaceAll('.', '/')}`);
}
