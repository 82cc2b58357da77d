import type { MillCertificate } from '../contract/own-steel.ts';
import { type Context, fromJson, mustChange } from './context.ts';
import type { OwnSteelStore } from './own-steel-types.ts';

/** The composition is a JSON document. */
type Row = Omit<MillCertificate, 'composition' | 'archived'> & { composition: string; archived: number };

const SELECT = `SELECT id, steel, heat_number AS heatNumber, date, note, composition, archived,
  created_at AS createdAt, updated_at AS updatedAt FROM mill_certificates`;
const NEWEST_FIRST = 'ORDER BY created_at DESC, id DESC';

function toCertificate(row: Row): MillCertificate {
  return {
    ...row,
    composition: fromJson<MillCertificate['composition']>(row.composition),
    archived: row.archived === 1,
  };
}

function toRow(certificate: MillCertificate): Row {
  return {
    ...certificate,
    composition: JSON.stringify(certificate.composition),
    archived: Number(certificate.archived),
  };
}

export function certificatePart({
  db,
  ids,
}: Context): Pick<OwnSteelStore, 'certificates' | 'certificate' | 'createCertificate' | 'saveCertificate'> {
  const all = db.prepare<[], Row>(`${SELECT} ${NEWEST_FIRST}`);
  const ofSteel = db.prepare<[string], Row>(`${SELECT} WHERE steel = ? ${NEWEST_FIRST}`);
  const one = db.prepare<[string], Row>(`${SELECT} WHERE id = ?`);
  const insert = db.prepare(
    `INSERT INTO mill_certificates (id, steel, heat_number, date, note, composition, archived, created_at, updated_at)
     VALUES (@id, @steel, @heatNumber, @date, @note, @composition, @archived, @createdAt, @updatedAt)`,
  );
  const update = db.prepare(
    `UPDATE mill_certificates SET heat_number = @heatNumber, date = @date, note = @note,
       composition = @composition, archived = @archived, updated_at = @updatedAt WHERE id = @id`,
  );
  return {
    certificates: (steel) => (steel === undefined ? all.all() : ofSteel.all(steel)).map(toCertificate),
    certificate(id) {
      const row = one.get(id);
      return row ? toCertificate(row) : null;
    },
    createCertificate(steel, draft, at) {
      const facts = { id: ids(), steel, archived: false, createdAt: at, updatedAt: at };
      const certificate: MillCertificate = { ...draft, ...facts };
      insert.run(toRow(certificate));
      return certificate;
    },
    saveCertificate(certificate) {
      mustChange(update.run(toRow(certificate)).changes, 'certificate', certificate.id);
      return certificate;
    },
  };
}
