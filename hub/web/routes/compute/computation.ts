import type { OpenAPIHono } from '@hono/zod-openapi';
import type { z } from 'zod';
import { declareRoute, json, jsonBody } from '../../route.ts';
import type { World } from './world.ts';

/** An answer as the physics hands it out, read-only all the way down; it goes straight into JSON. */
export type Frozen<T> = T extends readonly (infer Item)[]
  ? readonly Frozen<Item>[]
  : T extends object
    ? { readonly [Key in keyof T]: Frozen<T[Key]> }
    : T;

interface Plan<Question extends z.ZodType, Answer extends z.ZodType> {
  /** Last part of the path and stable: other programs rely on it. */
  readonly name: string;
  readonly summary: string;
  readonly question: Question;
  readonly answer: Answer;
  readonly run: (
    question: z.output<Question>,
    world: World,
  ) => Frozen<z.input<Answer>> | Promise<Frozen<z.input<Answer>>>;
}

/** One question that the hub answers out of hub/physics. */
export interface Computation {
  readonly name: string;
  readonly question: z.ZodType;
  readonly answer: z.ZodType;
  mount(app: OpenAPIHono, world: World): void;
}

/**
 * Declares `POST /api/v1/compute/{name}`. It changes nothing, so anybody who may look may ask. Refusals of the
 * physics carry codes that are problem codes too, and become problems where every exception does.
 */
export function computation<Question extends z.ZodType, Answer extends z.ZodType>(
  plan: Plan<Question, Answer>,
): Computation {
  const { name, question, answer } = plan;
  const route = declareRoute('look', {
    method: 'post',
    path: `/api/v1/compute/${name}`,
    tags: ['compute'],
    summary: plan.summary,
    request: { body: jsonBody(question) },
    responses: { 200: json(answer, 'The answer') },
  });
  const mount = (app: OpenAPIHono, world: World): void => {
    app.openapi(route, async (c) => {
      const asked = c.req.valid('json' as never) as z.output<Question>;
      return c.json((await plan.run(asked, world)) as object, 200) as never;
    });
  };
  return { name, question, answer, mount };
}
