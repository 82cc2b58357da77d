import { describe, expect, it } from 'vitest';
import { namingSchedule } from '../../../dashboard/pieces/batch.ts';
import {
  pieceRouteForm,
  type RouteAction,
  type RouteForm,
  reduceRoute,
  routeDraft,
  templateForm,
} from '../../../dashboard/pieces/route-form.ts';
import { PiecePatch } from '../../../hub/contract/piece.ts';
import { RouteTemplateDraft, TemplateStep } from '../../../hub/contract/route-template.ts';
import { DONE, piece } from './kit.ts';

const STEPS = [
  TemplateStep.parse({ kind: 'heat', step: 'normalise', scheduleId: 'sch' }),
  TemplateStep.parse({ kind: 'work', work: 'grind' }),
  TemplateStep.parse({ kind: 'check', check: 'file' }),
];
const arranged = (form: RouteForm, ...actions: RouteAction[]) => actions.reduce(reduceRoute, form);
const kinds = ({ steps }: RouteForm) => steps.map(({ step }) => step.kind);

describe('a route while it is arranged', () => {
  it('moves a step by one place, and not beyond the ends', () => {
    const form = templateForm(STEPS);
    expect(kinds(arranged(form, { type: 'move', key: 3, by: -1 }))).toEqual(['heat', 'check', 'work']);
    expect(kinds(arranged(form, { type: 'move', key: 1, by: -1 }))).toEqual(['heat', 'work', 'check']);
  });

  it('adds a step of each kind that the hub would take, and removes one', () => {
    const form = arranged(
      templateForm([]),
      { type: 'add', kind: 'heat' },
      { type: 'add', kind: 'work' },
      { type: 'add', kind: 'check' },
      { type: 'remove', key: 2 },
    );
    expect(kinds(form)).toEqual(['heat', 'check']);
    const draft = { name: 'Route', steps: form.steps.map(({ step }) => step) };
    expect(RouteTemplateDraft.safeParse(draft).success).toBe(true);
  });

  it('drops the schedule with the heat that it was chosen for, and keeps it otherwise', () => {
    const form = templateForm(STEPS);
    const tempered = arranged(form, { type: 'which', key: 1, which: 'temper' });
    expect(tempered.steps[0]?.step).toMatchObject({ step: 'temper', scheduleId: null });
    const named = arranged(form, { type: 'texts', key: 1, texts: { title: 'Again' } });
    expect(named.steps[0]?.step).toMatchObject({ title: 'Again', scheduleId: 'sch' });
  });

  it('takes no heat for a work', () => {
    const form = arranged(templateForm(STEPS), { type: 'which', key: 2, which: 'temper' });
    expect(form.steps[1]?.step).toMatchObject({ kind: 'work', work: 'grind' });
  });

  it('holds a reminder once, and lets it go', () => {
    const on: RouteAction = { type: 'reminder', key: 1, code: 'turn-for-even-heat', on: true };
    const form = arranged(templateForm(STEPS), on, on);
    expect(form.steps[0]?.step.reminders).toEqual(['turn-for-even-heat']);
    expect(arranged(form, { ...on, on: false }).steps[0]?.step.reminders).toEqual([]);
  });
});

describe('the route of a piece as it is sent back', () => {
  const HALF = piece({
    route: [
      { kind: 'work', work: 'shape', done: DONE },
      { kind: 'heat', step: 'harden' },
    ],
  });

  it('keeps the ids, so that the hub keeps the ticks, and gives a new step none', () => {
    const form = arranged(pieceRouteForm(HALF.route), { type: 'add', kind: 'check' });
    const route = routeDraft(form);
    expect(route.map(({ id }) => id)).toEqual(['s0', 's1', undefined]);
    // Ticks are set by their own route: the contract refuses a step that carries one.
    expect(PiecePatch.safeParse({ route }).success).toBe(true);
  });

  it('names a schedule at one heat and touches nothing else', () => {
    const { route } = namingSchedule(HALF, 's1', 'sch');
    expect(route).toMatchObject([
      { id: 's0', work: 'shape' },
      { id: 's1', step: 'harden', scheduleId: 'sch' },
    ]);
    expect(namingSchedule(HALF, 's0', 'sch').route?.[1]).toMatchObject({ scheduleId: null });
  });
});
