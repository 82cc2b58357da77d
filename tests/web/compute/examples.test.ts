import { describe, expect, it } from 'vitest';
import { COMPUTATIONS } from '../../../hub/web/routes/compute/routes.ts';
import { makeApi } from '../api-client.ts';

const api = makeApi();

async function examplesOf(name: string): Promise<readonly object[]> {
  const { body } = await api.call('GET', '/openapi.json');
  const schema = body.paths[`/api/v1/compute/${name}`].post.requestBody.content['application/json'].schema;
  return body.components.schemas[schema.$ref.split('/').at(-1)].examples;
}

describe('every computation in the document', () => {
  it.each(COMPUTATIONS.map(({ name, question, answer }) => [name, question, answer] as const))(
    '%s has examples that validate and are answered as documented',
    async (name, question, answer) => {
      const examples = await examplesOf(name);
      expect(examples.length).toBeGreaterThan(0);
      for (const example of examples) {
        expect(question.safeParse(example).error).toBeUndefined();
        const asked = await api.call('POST', `/api/v1/compute/${name}`, example);
        expect(asked, JSON.stringify(asked.body).slice(0, 300)).toMatchObject({ status: 200 });
        expect(answer.safeParse(asked.body).error).toBeUndefined();
      }
    },
  );

  it.each(COMPUTATIONS.map(({ name }) => name))('%s refuses a field that nobody knows', async (name) => {
    const [example] = await examplesOf(name);
    const asked = await api.call('POST', `/api/v1/compute/${name}`, { ...example, colour: 'red' });
    expect(asked).toMatchObject({ status: 400, body: { code: 'invalid-request' } });
  });
});
