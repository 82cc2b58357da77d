import '../parts/sheets.css';
import '../schedules/schedules.css';
import './setup.css';
import type { FeedState } from '../feed/state.ts';
import { LinkButton } from '../parts/button.tsx';
import { Page } from '../parts/page.tsx';
import { hrefTo } from '../router.ts';
import { useShell } from '../shell.ts';
import { notifyWords } from '../words/notify.ts';
import { setupWords } from '../words/setup.ts';
import { Bindings } from './bindings.tsx';
import { Channels } from './channels.tsx';
import { Furnaces } from './furnaces.tsx';
import { Limits } from './limits.tsx';
import { Nodes } from './nodes.tsx';
import { Notify } from './notify.tsx';
import { Start } from './start.tsx';
import { Steels } from './steels.tsx';

const SECTIONS = [
  { section: '', word: setupWords.sections.start },
  { section: 'furnaces', word: setupWords.sections.furnaces },
  { section: 'nodes', word: setupWords.sections.nodes },
  { section: 'channels', word: setupWords.sections.channels },
  { section: 'steels', word: setupWords.sections.steels },
  { section: 'bindings', word: setupWords.sections.bindings },
  { section: 'notify', word: notifyWords.section },
  { section: 'limits', word: setupWords.sections.limits },
] as const;

/** What the shop is made of, part by part. */
export function Setup({ section }: { readonly section: string }) {
  const { feed } = useShell();
  const state = feed.state.value;
  const here = SECTIONS.find((entry) => entry.section === section);
  return (
    <Page
      title={here && section !== '' ? here.word : setupWords.title}
      actions={<LinkButton href={hrefTo({ view: 'wall' })}>{setupWords.toWall}</LinkButton>}
    >
      <nav class="setup-nav" aria-label={setupWords.nav}>
        {SECTIONS.map((entry) => (
          <a
            key={entry.section}
            href={hrefTo({ view: 'setup', section: entry.section })}
            aria-current={entry.section === section ? 'page' : undefined}
          >
            {entry.word}
          </a>
        ))}
      </nav>
      {state === null ? <p role="status">{setupWords.asking}</p> : partOf(section, state)}
    </Page>
  );
}

function partOf(section: string, state: FeedState) {
  switch (section) {
    case '':
      return <Start state={state} />;
    case 'furnaces':
      return <Furnaces state={state} />;
    case 'nodes':
      return <Nodes state={state} />;
    case 'channels':
      return <Channels state={state} />;
    case 'steels':
      return <Steels state={state} />;
    case 'bindings':
      return <Bindings />;
    case 'notify':
      return <Notify />;
    case 'limits':
      return <Limits state={state} />;
    default:
      return <p>{setupWords.unknownSection(section)}</p>;
  }
}
