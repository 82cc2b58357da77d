import { afterEach, describe, expect, it } from 'vitest';
import { MailTarget } from '../../hub/contract/notify.ts';
import { sendMail } from '../../hub/notify/mail.ts';
import { TEST_CERTIFICATE, TEST_KEY } from '../broker/tls-fixture.ts';
import { MESSAGE, mailbox, outside } from './servers.ts';

const closing: (() => Promise<void>)[] = [];
afterEach(async () => {
  for (const close of closing.splice(0)) await close();
});

async function open(options: Parameters<typeof mailbox>[0] = {}) {
  const box = await mailbox(options);
  closing.push(box.close);
  return box;
}

function target(port: number, more: object = {}) {
  return MailTarget.parse({
    kind: 'e-mail',
    host: '127.0.0.1',
    port,
    security: 'none',
    from: 'hub@shop.example',
    to: ['smith@shop.example', 'boss@shop.example'],
    ...more,
  });
}

const TLS = { key: TEST_KEY, cert: TEST_CERTIFICATE };
const SIGN_IN = { user: 'hub', password: 'correct horse' };
const onAuth: NonNullable<Parameters<typeof mailbox>[0]>['onAuth'] = (
  { username, password },
  _session,
  done,
) =>
  username === SIGN_IN.user && password === SIGN_IN.password
    ? done(null, { user: username })
    : done(new Error(`no such user or password (${password})`));

describe('an e-mail', () => {
  it('arrives at everybody with its title as subject and its words as plain text', async () => {
    const box = await open();
    expect(await sendMail(target(box.port), MESSAGE, outside())).toEqual({ ok: true });
    const [mail] = box.mails;
    expect(mail).toMatchObject({ from: 'hub@shop.example', to: ['smith@shop.example', 'boss@shop.example'] });
    expect(mail?.text).toMatch(/^Subject: =\?UTF-8\?/m);
    expect(mail?.text).toContain('Auto-Submitted: auto-generated');
    expect(mail?.text).toContain('Go out.');
  });

  it('signs in over TLS whose certificate it checks', async () => {
    const box = await open({ ...TLS, secure: true, authOptional: false, onAuth });
    const secure = target(box.port, { security: 'tls', ...SIGN_IN });
    expect(await sendMail(secure, MESSAGE, outside(['127.0.0.1'], { ca: TEST_CERTIFICATE }))).toEqual({
      ok: true,
    });
    expect(box.mails).toHaveLength(1);
    const distrusted = await sendMail(secure, MESSAGE, outside());
    expect(distrusted).toMatchObject({ ok: false, code: 'certificate-refused', passing: false });
  });

  it('signs in after STARTTLS, and says nothing where the server does not offer it', async () => {
    const box = await open({ ...TLS, disabledCommands: [], authOptional: false, onAuth });
    const starttls = { security: 'starttls', ...SIGN_IN };
    const trusted = outside(['127.0.0.1'], { ca: TEST_CERTIFICATE });
    expect(await sendMail(target(box.port, starttls), MESSAGE, trusted)).toEqual({ ok: true });
    const bare = await open({ authOptional: true });
    const refused = await sendMail(target(bare.port, starttls), MESSAGE, trusted);
    expect(refused.ok).toBe(false);
    expect(bare.mails).toEqual([]);
  });

  it('tells a wrong password, which no waiting mends, without telling the password', async () => {
    const box = await open({ ...TLS, secure: true, authOptional: false, onAuth });
    const wrong = target(box.port, { security: 'tls', user: 'hub', password: 'wrong-horse' });
    const outcome = await sendMail(wrong, MESSAGE, outside(['127.0.0.1'], { ca: TEST_CERTIFICATE }));
    expect(outcome).toMatchObject({ ok: false, code: 'sign-in-refused', passing: false });
    expect(JSON.stringify(outcome)).not.toContain('wrong-horse');
    expect(JSON.stringify(outcome)).toContain('(password)');
  });

  // RFC 5321 4.2.1: 4yz passes, 5yz does not.
  it.each([
    [450, 'other-side-failed', true],
    [550, 'other-side-refused', false],
  ])('takes %i for %s', async (responseCode, code, passing) => {
    const box = await open({
      onRcptTo: (_address, _session, done) => done(Object.assign(new Error('not now'), { responseCode })),
    });
    expect(await sendMail(target(box.port), MESSAGE, outside())).toMatchObject({ ok: false, code, passing });
  });

  it('says that nobody answers', async () => {
    const box = await open();
    await box.close();
    closing.pop();
    expect(await sendMail(target(box.port), MESSAGE, outside())).toMatchObject({
      code: 'not-reached',
      passing: true,
    });
  });
});
