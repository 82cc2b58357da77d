import { describe, expect, it } from 'vitest';
import { declaredRoutes } from '../../../hub/web/route.ts';
import { COMPUTATIONS } from '../../../hub/web/routes/compute/routes.ts';
import { makeApi } from '../api-client.ts';

const api = makeApi();

async function documented(
  name: string,
): Promise<{ questions: readonly object[]; answers: readonly object[] }> {
  const { body } = await api.call('GET', '/openapi.json');
  const { requestBody, responses } = body.paths[`/api/v1/compute/${name}`].post;
  const examplesIn = ({ content }: { content: Record<string, { schema: { $ref: string } }> }) =>
    body.components.schemas[content['application/json']?.schema.$ref.split('/').at(-1) ?? '']?.examples ?? [];
  return { questions: examplesIn(requestBody), answers: examplesIn(responses[200]) };
}

describe('every computation in the document', () => {
  it.each(COMPUTATIONS.map(({ name, question, answer }) => [name, question, answer] as const))(
    '%s has examples that validate and are answered as documented',
    async (name, question, answer) => {
      const { questions, answers } = await documented(name);
      expect(questions.length).toBeGreaterThan(0);
      for (const [index, example] of questions.entries()) {
        expect(question.safeParse(example).error).toBeUndefined();
        const asked = await api.call('POST', `/api/v1/compute/${name}`, example);
        expect(asked, JSON.stringify(asked.body).slice(0, 300)).toMatchObject({ status: 200 });
        // Nothing missing, and nothing in it that the document does not tell.
        expect(answer.parse(asked.body)).toEqual(asked.body);
        if (answers[index] !== undefined) expect(asked.body).toEqual(answers[index]);
      }
    },
  );

  it.each(COMPUTATIONS.map(({ name }) => name))('%s refuses a field that nobody knows', async (name) => {
    const [example] = (await documented(name)).questions;
    const asked = await api.call('POST', `/api/v1/compute/${name}`, { ...example, colour: 'red' });
    expect(asked).toMatchObject({ status: 400, body: { code: 'invalid-request' } });
  });
});

it('names every computation once, and none of them is behind a rule that only the keeper has', () => {
  const names = COMPUTATIONS.map(({ name }) => name);
  expect(new Set(names).size).toBe(names.length);
  const rules = declaredRoutes().filter(({ path }) => path.startsWith('/api/v1/compute/'));
  expect(rules.map(({ path }) => path).sort()).toEqual(names.map((name) => `/api/v1/compute/${name}`).sort());
  expect(new Set(rules.map(({ rule }) => rule))).toEqual(new Set(['look']));
});
