import BetterSqlite3 from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { migrate } from '../../hub/archive/migrate.ts';
import { MIGRATIONS } from '../../hub/archive/migrations/list.ts';
import type { FurnaceFit } from '../../hub/contract/furnace-fit.ts';
import { OwnSteelDraft } from '../../hub/contract/own-steel.ts';
import { addFurnace, openTest, T0, temporaryFile } from './helpers.ts';

const DRAFT = OwnSteelDraft.parse({ name: 'Spring', composition: { C: 0.6, Si: 1.8 } });
const HEAT = { heatNumber: '4711', date: '2026-01-31', note: '', composition: { C: 0.61 } };
const FIT: FurnaceFit = {
  effectiveEmissivity: 0.62,
  filmWattsPerSquareMetreKelvin: 18,
  residualCelsius: 3.4,
  separated: true,
  loadLowCelsius: 20,
  loadHighCelsius: 843,
  fittedAt: T0,
  from: { kind: 'firing', firingId: 'f' },
};

describe('own steels and certificates in the archive', () => {
  it('are there again after a restart', () => {
    const path = temporaryFile();
    const first = openTest(path);
    const steel = first.createOwnSteel(DRAFT, 'spring', T0);
    const certificate = first.createCertificate(steel.id, HEAT, T0);
    first.close();
    const second = openTest(path);
    expect(second.ownSteel(steel.id)).toEqual(steel);
    expect(second.certificates(steel.id)).toEqual([certificate]);
    expect(second.certificate(certificate.id)).toEqual(certificate);
  });

  it('hold one name and one heat once, until it is put away', () => {
    const archive = openTest();
    const steel = archive.createOwnSteel(DRAFT, 'spring', T0);
    expect(() => archive.createOwnSteel(DRAFT, 'spring', T0)).toThrow(/there already/);
    archive.saveOwnSteel({ ...steel, archived: true }, 'spring');
    archive.createOwnSteel(DRAFT, 'spring', T0);
    const certificate = archive.createCertificate('1084', HEAT, T0);
    expect(() => archive.createCertificate('1084', HEAT, T0)).toThrow(/there already/);
    archive.saveCertificate({ ...certificate, archived: true });
    archive.createCertificate('1084', HEAT, T0);
    expect(archive.ownSteels()).toHaveLength(2);
    expect(archive.certificates('1084')).toHaveLength(2);
  });

  it('refuse a change of what is not there', () => {
    const archive = openTest();
    const steel = archive.createOwnSteel(DRAFT, 'spring', T0);
    expect(() => archive.saveOwnSteel({ ...steel, id: 'none' }, 'other')).toThrow(/no steel/);
    expect(archive.ownSteel('none')).toBeNull();
    expect(archive.certificate('none')).toBeNull();
  });
});

describe('the fit of a furnace in the archive', () => {
  it('is none at first, kept through a restart, and taken away again', () => {
    const path = temporaryFile();
    const first = openTest(path);
    const furnace = addFurnace(first);
    expect(first.furnace(furnace.id)?.fit).toBeNull();
    first.saveFurnace({ ...furnace, fit: FIT }, T0);
    first.close();
    const second = openTest(path);
    expect(second.furnace(furnace.id)?.fit).toEqual(FIT);
    second.saveFurnace({ ...furnace, fit: null }, T0);
    expect(second.furnaces()[0]?.fit).toBeNull();
  });

  it('is none for furnaces of an archive from before', () => {
    const path = temporaryFile();
    const before = new BetterSqlite3(path);
    before.pragma('application_id = 0');
    migrate(before, MIGRATIONS.slice(0, 4));
    before
      .prepare(
        `INSERT INTO furnaces (id, name, kind, rated_celsius, note, archived, created_at, updated_at)
         VALUES ('f', 'Forge', 'gas-forge', 1300, '', 0, 1, 1)`,
      )
      .run();
    migrate(before, MIGRATIONS);
    expect(before.prepare('SELECT fit FROM furnaces').pluck().get()).toBeNull();
    before.close();
  });
});
