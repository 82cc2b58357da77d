import BetterSqlite3 from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { migrate } from '../../hub/archive/migrate.ts';
import { MIGRATIONS } from '../../hub/archive/migrations/list.ts';
import { Probe } from '../../hub/contract/probe.ts';
import { addChannel, openTest, T0, temporaryFile } from './helpers.ts';

const probe = Probe.parse({
  type: 'N',
  tolerance: 'iec-1',
  construction: 'mineral-insulated',
  millimetres: 3,
  digitiserStepCelsius: 0.25,
  correction: { offsetCelsius: -1.5, standardUncertaintyCelsius: 0.75 },
  source: { kind: 'emf', emfChannel: 'tc', coldJunctionChannel: 'junction' },
});

describe('the probe of a channel', () => {
  it('is kept with the channel, through a restart', () => {
    const path = temporaryFile();
    const first = openTest(path);
    const { id } = addChannel(first, 'chamber', { probe });
    expect(first.channel(id)?.probe).toEqual(probe);
    first.close();
    expect(openTest(path).channel(id)?.probe).toEqual(probe);
  });

  it('is none until somebody says so, and can be changed and taken away', () => {
    const archive = openTest();
    const channel = addChannel(archive);
    expect(channel.probe).toBeNull();
    expect(archive.saveChannel({ ...channel, probe }).probe).toEqual(probe);
    expect(archive.saveChannel({ ...channel, probe: null }).probe).toBeNull();
  });

  it('is none for a channel that spoke up on its own', () => {
    const archive = openTest();
    archive.commitIntake([
      {
        node: 'forge-1',
        receivedAt: T0,
        readings: [{ name: 'tc', quantity: 'emf', at: T0, value: 0.03, quality: 'good' }],
        refusals: [],
      },
    ]);
    expect(archive.channels().map((channel) => channel.probe)).toEqual([null]);
  });

  it('keeps what was there when an archive of the version before is opened', () => {
    const path = temporaryFile();
    const before = new BetterSqlite3(path);
    before.pragma(`application_id = ${0x534f414b}`);
    migrate(before, MIGRATIONS.slice(0, 3));
    before.exec(`
      INSERT INTO nodes (id, name, label, note, adopted, status, created_at)
        VALUES ('n1', 'forge-1', '', '', 1, 'unknown', ${T0});
      INSERT INTO channels (series, id, node, name, label, quantity, unit, role, stale_after_seconds, adopted,
        archived, created_at)
        VALUES (1, 'c1', 'forge-1', 'chamber', 'Front', 'temperature', NULL, 'chamber', 20, 1, 0, ${T0});
      INSERT INTO readings (series, at, value, quality) VALUES (1, ${T0}, 812.5, 0);`);
    before.close();
    const archive = openTest(path);
    expect(archive.channel('c1')).toMatchObject({ label: 'Front', probe: null, latest: { value: 812.5 } });
    const [channel] = archive.channels();
    expect(channel && archive.saveChannel({ ...channel, probe }).probe).toEqual(probe);
  });
});
