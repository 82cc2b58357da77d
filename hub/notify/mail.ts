import { isIP } from 'node:net';
import { createTransport } from 'nodemailer';
import type { z } from 'zod';
import type { MailTarget } from '../contract/notify.ts';
import { admit } from './guard.ts';
import type { Outside } from './http.ts';
import type { Message } from './message.ts';
import type { SendOutcome } from './types.ts';

/** E-mail through nodemailer: it quotes addresses and folds headers; the guard chooses where it connects to. */

type Mail = z.infer<typeof MailTarget>;
const MOST_MS = 10_000;
const MOST_DETAIL = 300;

/** Never rejects. */
export async function sendMail(target: Mail, message: Message, outside: Outside): Promise<SendOutcome> {
  const admitted = await admit(target.host, outside.allowed(), outside.lookup);
  if (!admitted.ok) return admitted;
  const transport = createTransport(optionsFor(target, admitted.address, outside.ca));
  try {
    await transport.sendMail({
      from: { name: message.shop, address: target.from },
      to: target.to.map((address) => ({ name: '', address })),
      subject: oneLine(message.title),
      text: message.text,
      messageId: `<${message.delivery}@soakwatch.invalid>`,
      headers: { 'Auto-Submitted': 'auto-generated', Importance: 'high' },
      disableFileAccess: true,
      disableUrlAccess: true,
    });
    return { ok: true };
  } catch (fault) {
    return refusalOf(fault, target);
  } finally {
    transport.close();
  }
}

function optionsFor(target: Mail, address: string, ca: string | undefined) {
  const { host, port, security, user, password } = target;
  return {
    host: address,
    port,
    secure: security === 'tls',
    requireTLS: security === 'starttls',
    ignoreTLS: security === 'none',
    ...(user === '' ? {} : { auth: { user, pass: password ?? '' } }),
    // The connection goes to the checked address; the certificate is checked against the name that was entered.
    tls: {
      ...(isIP(host) === 0 ? { servername: host } : {}),
      minVersion: 'TLSv1.2' as const,
      ...(ca === undefined ? {} : { ca }),
    },
    connectionTimeout: MOST_MS,
    greetingTimeout: MOST_MS,
    socketTimeout: MOST_MS,
    logger: false,
  };
}

/** A subject is one line, whatever a furnace or a channel is called. */
export function oneLine(text: string): string {
  return text.replace(/[\p{Cc}\u2028\u2029]+/gu, ' ').slice(0, 200);
}

function refusalOf(fault: unknown, target: Mail): SendOutcome {
  const said = fault instanceof Error ? fault.message : String(fault);
  const code = fault instanceof Error && 'code' in fault ? String(fault.code) : '';
  const status = fault instanceof Error && 'responseCode' in fault ? Number(fault.responseCode) : null;
  const detail = oneLine(withoutSecrets(said, target)).slice(0, MOST_DETAIL);
  if (code === 'EAUTH') return { ok: false, code: 'sign-in-refused', detail, passing: false };
  if (code === 'ETLS' || /certificate|self.signed/i.test(said))
    return { ok: false, code: 'certificate-refused', detail, passing: false };
  // RFC 5321 4.2.1: 5yz is for good, 4yz may be better later.
  if (status !== null && status >= 500)
    return { ok: false, code: 'other-side-refused', detail, passing: false };
  if (status !== null) return { ok: false, code: 'other-side-failed', detail, passing: true };
  return { ok: false, code: 'not-reached', detail, passing: true };
}

/** A server may throw back in its answer what was said to it, plain or as SMTP encodes it. */
function withoutSecrets(text: string, { user, password }: Mail): string {
  if (password === undefined) return text;
  const base64 = (secret: string): string => Buffer.from(secret).toString('base64');
  const forms = [password, base64(password), base64(`\0${user}\0${password}`)];
  return forms.reduce((clean, form) => clean.replaceAll(form, '(password)'), text);
}
