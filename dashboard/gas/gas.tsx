import '../parts/sheets.css';
import './gas.css';
import { useState } from 'preact/hooks';
import type { GasView } from '../../hub/contract/gas.ts';
import type { ShopSettings } from '../../hub/contract/shop.ts';
import { Button } from '../parts/button.tsx';
import { Page } from '../parts/page.tsx';
import { ProblemNote } from '../parts/problem.tsx';
import { hrefTo } from '../router.ts';
import { useShell } from '../shell.ts';
import { gasWords } from '../words/gas.ts';
import { Changes } from './changes.tsx';
import { GasFirings } from './firings.tsx';
import { FurnaceGasNow, SupplyNow } from './now.tsx';
import { GasSettingsDialog } from './settings-dialog.tsx';
import { useGas } from './use-gas.ts';

/** The gas: now, what is left and for how long, what each firing burned, cylinder changes. */
export function GasPage() {
  const { feed } = useShell();
  const { answer, reload } = useGas();
  const [setting, setSetting] = useState(false);
  const settings = feed.state.value?.shop.settings;
  if (settings === undefined || answer.state === 'waiting') {
    return (
      <Page title={gasWords.title}>
        <p role="status">{gasWords.waiting}</p>
      </Page>
    );
  }
  const actions = <Button onPress={() => setSetting(true)}>{gasWords.settings}</Button>;
  return (
    <div class="gas-page">
      <Page title={gasWords.title} actions={actions}>
        {feed.blind.value && <p class="gas-told">{gasWords.old}</p>}
        {answer.state === 'failed' ? (
          <ProblemNote error={answer.error} />
        ) : (
          <Sections view={answer.value} settings={settings} reload={reload} />
        )}
        {setting && (
          <GasSettingsDialog
            settings={settings}
            onClose={() => {
              setSetting(false);
              reload();
            }}
          />
        )}
      </Page>
    </div>
  );
}

interface SectionsProps {
  readonly view: GasView;
  readonly settings: ShopSettings;
  readonly reload: () => void;
}

function Sections({ view, settings, reload }: SectionsProps) {
  const { furnaces, supplies } = view;
  const nameOf = (supply: string): string =>
    furnaces.find(({ furnaceId }) => furnaceId === supply)?.name ?? gasWords.shopSupply;
  return (
    <>
      <NotSetUp view={view} />
      {furnaces.length > 0 && (
        <section class="gas-section" aria-labelledby="gas-now">
          <h2 id="gas-now">{gasWords.now}</h2>
          <div class="gas-cards">
            {furnaces.map((furnace) => (
              <FurnaceGasNow key={furnace.furnaceId} furnace={furnace} units={settings} />
            ))}
            {supplies.map((supply) => (
              <SupplyNow
                key={supply.id}
                supply={supply}
                name={`${gasWords.supply}: ${nameOf(supply.id)}`}
                units={settings}
              />
            ))}
          </div>
        </section>
      )}
      {furnaces.length > 0 && (
        <div class="gas-columns">
          <section class="gas-section" aria-labelledby="gas-use">
            <h2 id="gas-use">{gasWords.use}</h2>
            <GasFirings rows={view.firings} units={settings} />
          </section>
          <section class="gas-section" aria-labelledby="gas-changes">
            <h2 id="gas-changes">{gasWords.changes}</h2>
            <Changes
              changes={view.changes}
              supplies={supplies}
              nameOf={nameOf}
              units={settings}
              onChanged={reload}
            />
          </section>
        </div>
      )}
      <section class="gas-section" aria-labelledby="gas-limits">
        <h2 id="gas-limits">{gasWords.limits}</h2>
        <ul class="gas-notices">
          {view.notices.map((notice) => (
            <li key={notice}>{notice}</li>
          ))}
        </ul>
        <p class="gas-caution">{view.caution}</p>
      </section>
    </>
  );
}

function NotSetUp({ view }: { readonly view: GasView }) {
  const names = view.notSetUp.map(({ name }) => name).join(', ');
  const link = <a href={hrefTo({ view: 'setup', section: 'furnaces' })}>{gasWords.enter}</a>;
  if (view.furnaces.length === 0) {
    return (
      <section class="gas-section">
        <h2>{gasWords.none}</h2>
        <p class="aside">{gasWords.noneLong}</p>
        <p>{link}</p>
      </section>
    );
  }
  return names === '' ? null : (
    <p class="aside">
      {gasWords.notSetUp(names)} {link}
    </p>
  );
}
