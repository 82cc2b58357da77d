import type { RouteTemplate, RouteTemplateDraft } from '../contract/route-template.ts';
import { type Context, fromJson } from './context.ts';
import { ArchiveError } from './errors.ts';
import type { PieceStore } from './piece-types.ts';
import { GIVEN_ROUTES } from './route-template-given.ts';

type TemplatePart = Pick<
  PieceStore,
  'routeTemplates' | 'routeTemplate' | 'createRouteTemplate' | 'saveRouteTemplate' | 'deleteRouteTemplate'
>;
type StoredTemplate = Omit<RouteTemplate, 'steps'> & { steps: string };

const SELECT =
  'SELECT id, name, note, steps, created_at AS createdAt, updated_at AS updatedAt FROM route_templates';

function toTemplate(row: StoredTemplate): RouteTemplate {
  return { ...row, steps: fromJson<RouteTemplate['steps']>(row.steps) };
}

/** Templates of routes. The ones that the house brings are given once: those that a user deletes stay away. */
export function routeTemplatePart({ db, ids, write }: Context, now: number): TemplatePart {
  const all = db.prepare<[], StoredTemplate>(`${SELECT} ORDER BY name COLLATE NOCASE, id`);
  const one = db.prepare<[string], StoredTemplate>(`${SELECT} WHERE id = ?`);
  const insert = db.prepare(
    `INSERT INTO route_templates (id, name, note, created_at, updated_at, steps)
     VALUES (@id, @name, @note, @createdAt, @updatedAt, @steps)`,
  );
  const update = db.prepare(
    'UPDATE route_templates SET name = @name, note = @note, updated_at = @at, steps = @steps WHERE id = @id',
  );
  const remove = db.prepare('DELETE FROM route_templates WHERE id = ?');
  const give = db.prepare('INSERT INTO given_once (what, at) VALUES (?, ?) ON CONFLICT DO NOTHING');

  function routeTemplate(id: string): RouteTemplate | null {
    const row = one.get(id);
    return row ? toTemplate(row) : null;
  }

  function create(draft: RouteTemplateDraft, at: number): RouteTemplate {
    const made: RouteTemplate = { ...draft, id: ids(), createdAt: at, updatedAt: at };
    insert.run({ ...made, steps: JSON.stringify(made.steps) });
    return made;
  }

  write(() => {
    if (give.run('route-templates', now).changes === 0) return;
    for (const draft of GIVEN_ROUTES) create(draft, now);
  });

  return {
    routeTemplates: () => all.all().map(toTemplate),
    routeTemplate,
    createRouteTemplate: create,
    saveRouteTemplate(id, draft, at) {
      update.run({ ...draft, steps: JSON.stringify(draft.steps), id, at });
      const kept = routeTemplate(id);
      if (!kept) throw new ArchiveError('not-found', `there is no route template with the id "${id}"`);
      return kept;
    },
    deleteRouteTemplate: (id) => remove.run(id).changes > 0,
  };
}
