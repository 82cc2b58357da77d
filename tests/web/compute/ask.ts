import { type ApiAnswer, makeApi } from '../api-client.ts';

const api = makeApi();

/** What the hub answers to a question of the science. Fails when it refuses. */
export async function answerTo(name: string, question: object): Promise<ApiAnswer['body']> {
  const { status, body } = await api.call('POST', `/api/v1/compute/${name}`, question);
  if (status !== 200) throw new Error(`${name}: ${status} ${JSON.stringify(body)}`);
  return body;
}

export function codesOf(answer: { readonly flags: readonly { readonly code: string }[] }): string[] {
  return answer.flags.map((flag) => flag.code);
}
