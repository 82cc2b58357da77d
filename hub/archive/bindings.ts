import type { Binding } from '../contract/shop.ts';
import { PayloadDecoder } from '../contract/shop.ts';
import type { Context } from './context.ts';
import type { Archive } from './types.ts';

type BindingRow = Omit<Binding, 'decoder'> & { decoder: string };

export function bindingPart({
  db,
  ids,
}: Context): Pick<Archive, 'bindings' | 'createBinding' | 'deleteBinding'> {
  const all = db.prepare<[], BindingRow>(
    `SELECT id, topic, node, channel, quantity, unit, scale, "offset", decoder, created_at AS createdAt
     FROM bindings ORDER BY created_at, id`,
  );
  const insert = db.prepare(
    `INSERT INTO bindings (id, topic, node, channel, quantity, unit, scale, "offset", decoder, created_at)
     VALUES (@id, @topic, @node, @channel, @quantity, @unit, @scale, @offset, @decoder, @createdAt)`,
  );
  const remove = db.prepare('DELETE FROM bindings WHERE id = ?');

  return {
    bindings: () =>
      all.all().map((row) => ({ ...row, decoder: PayloadDecoder.parse(JSON.parse(row.decoder)) })),
    createBinding(draft, at) {
      const binding: Binding = { ...draft, id: ids(), createdAt: at };
      insert.run({ ...binding, decoder: JSON.stringify(binding.decoder) });
      return binding;
    },
    deleteBinding: (id) => remove.run(id).changes > 0,
  };
}
