import { z } from 'zod';
import { AlarmPriority } from './alarm.ts';
import { patchShape } from './patch.ts';
import { EpochMs } from './reading.ts';
import { Id } from './shop.ts';

/** Reaching people: the ways, when each is used, what was sent. Secrets go in and never come out. */

/** Printable text on one line: a line break in an address or a subject would begin a header of its own. */
const Line = (most: number) =>
  z
    .string()
    .trim()
    .max(most)
    .regex(/^[^\p{Cc}\u2028\u2029]*$/u, 'text on one line, without control characters');

export const MailAddress = z
  .email('a mail address, such as smith@example.org')
  .max(254)
  .regex(/^[^\s,;<>"]+$/, 'one plain mail address');

/** Times of a day on the shop's own clock. */
export const TimeOfDay = z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'a time of day, such as 07:30');

/** From `from` until before `to` on these days; past midnight when `to` is not later, counted to the day it began. */
export const NotifyHours = z
  .strictObject({
    days: z.array(z.int().min(1).max(7)).min(1).max(7).describe('ISO 8601: 1 Monday to 7 Sunday'),
    from: TimeOfDay,
    to: TimeOfDay,
  })
  .meta({ id: 'NotifyHours' });
export type NotifyHours = z.infer<typeof NotifyHours>;

const ruleShape = {
  priorities: z.array(AlarmPriority).min(1).max(2).default(['danger']).describe('Alarms of which priority'),
  hours: NotifyHours.nullable().default(null).describe('null: at any hour'),
  dangerAnyHour: z.boolean().default(true).describe('A danger is told outside the hours too'),
  afterMinutes: z
    .int()
    .min(0)
    .max(1440)
    .default(0)
    .describe('Only if nobody has acknowledged the alarm within so many minutes; 0: at once'),
  repeatMinutes: z
    .int()
    .min(1)
    .max(1440)
    .nullable()
    .default(null)
    .describe('Again after so many minutes while nobody has acknowledged it; null: once'),
};
export const NotifyRule = z.strictObject(ruleShape).meta({ id: 'NotifyRule' });
export type NotifyRule = z.infer<typeof NotifyRule>;

const HttpUrl = z
  .url({ protocol: /^https?$/, error: 'an http:// or https:// address' })
  .max(1000)
  .refine((text) => URL.canParse(text) && new URL(text).username === '' && new URL(text).password === '', {
    message: 'an address without user and password: they would stand in logs on the way',
  });

const HostName = z
  .string()
  .trim()
  .min(1)
  .max(253)
  .regex(/^[A-Za-z0-9.:_-]+$/, 'a host name or an address');

const mailShape = {
  host: HostName.describe('The mail server'),
  port: z.int().min(1).max(65_535).default(465),
  security: z
    .enum(['tls', 'starttls', 'none'])
    .default('tls')
    .describe('tls: from the first byte (465); starttls: required before anything is said (587); none: open'),
  user: Line(200).default('').describe('Empty: without signing in'),
  from: MailAddress,
  to: z.array(MailAddress).min(1).max(20),
};
const Password = Line(500).min(1).optional().describe('Goes in and never comes out; left out: as it was');
export const WebhookSecret = z
  .string()
  .min(16, 'at least 16 characters')
  .max(200)
  .optional()
  .describe('Signs each message (HMAC-SHA256); goes in and never comes out');

export const MailTarget = z.strictObject({ kind: z.literal('e-mail'), ...mailShape, password: Password });
export const WebhookTarget = z.strictObject({
  kind: z.literal('webhook'),
  url: HttpUrl.optional().describe('Goes in and never comes out whole: it may hold a key'),
  secret: WebhookSecret,
});
const PushKeys = z.strictObject({
  p256dh: z.base64url().min(80).max(100),
  auth: z.base64url().min(20).max(40),
});
export const PushTarget = z.strictObject({
  kind: z.literal('push'),
  subscription: z
    .strictObject({
      endpoint: HttpUrl,
      keys: PushKeys,
      expirationTime: z.number().nullable().optional(),
    })
    .optional()
    .describe('As the browser gives it (Push API); goes in and never comes out'),
});
export const NotifyTarget = z.discriminatedUnion('kind', [MailTarget, WebhookTarget, PushTarget]);
export type NotifyTarget = z.infer<typeof NotifyTarget>;

const wayShape = {
  name: Line(80).min(1).describe('What people call it: whose mailbox, which phone'),
  enabled: z.boolean().default(true),
  rule: NotifyRule.default(NotifyRule.parse({})),
  target: NotifyTarget,
};
export const NotifyWayDraft = z.strictObject(wayShape).meta({ id: 'NotifyWayDraft' });
export type NotifyWayDraft = z.infer<typeof NotifyWayDraft>;
export const NotifyWayPatch = z.strictObject(patchShape(wayShape)).meta({ id: 'NotifyWayPatch' });
export type NotifyWayPatch = z.infer<typeof NotifyWayPatch>;

/** What can be shown of a target. */
export const ShownTarget = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('e-mail'), ...mailShape, hasPassword: z.boolean() }),
  z.object({ kind: z.literal('webhook'), origin: z.string().describe('Scheme, host and port alone') }),
  z.object({ kind: z.literal('push'), origin: z.string().describe('The push service of that browser') }),
]);
export type ShownTarget = z.infer<typeof ShownTarget>;

export const WayTrouble = z.object({ since: EpochMs, code: z.string(), detail: z.string() });
export type WayTrouble = z.infer<typeof WayTrouble>;

export const NotifyWay = z
  .object({
    id: Id,
    name: z.string(),
    enabled: z.boolean(),
    rule: NotifyRule,
    target: ShownTarget,
    trouble: WayTrouble.nullable().describe('It does not get through; null: nothing known against it'),
    createdAt: EpochMs,
  })
  .meta({ id: 'NotifyWay' });
export type NotifyWay = z.infer<typeof NotifyWay>;

/** MQTT topic levels that are ours to write: no wildcards, not the nodes' own tree, not the broker's. */
export const TopicPrefix = z
  .string()
  .max(100)
  .regex(/^[A-Za-z0-9_.-]+(\/[A-Za-z0-9_.-]+)*$/, 'topic levels of letters, digits and _ . - between slashes')
  .refine((text) => text.split('/')[0] !== 'soakwatch', {
    message: 'topics below soakwatch/ belong to the nodes: choose another first level',
  });

const settingsShape = {
  timeZone: z
    .string()
    .max(60)
    .refine(isTimeZone, { message: 'a time zone such as Europe/Berlin' })
    .nullable()
    .default(null)
    .describe("IANA name; null: the clock of the hub's computer"),
  topicPrefix: TopicPrefix.nullable()
    .default(null)
    .describe('Where the light and the heartbeat are published; null: soakwatch-out/ and the shop'),
  heartbeatSeconds: z.int().min(2).max(300).default(10),
  allowedNetworks: z
    .array(z.string().max(60))
    .max(20)
    .default([])
    .describe("The shop's own networks that mail and messages may go to, such as 192.168.1.0/24"),
  contact: MailAddress.nullable()
    .default(null)
    .describe('Push services are told whom to write to (RFC 8292)'),
  pingEveryMinutes: z.int().min(1).max(1440).default(5),
};
/** `pingUrl`: left out, as it was; null: none. It may hold a key, so it never comes out whole. */
export const NotifySettingsPatch = z
  .strictObject({ ...patchShape(settingsShape), pingUrl: HttpUrl.nullable().optional() })
  .meta({ id: 'NotifySettingsPatch' });
export type NotifySettingsPatch = z.infer<typeof NotifySettingsPatch>;
export const NotifySettings = z
  .object({
    ...settingsShape,
    pingOrigin: z.string().nullable().describe('Where the hub says that it lives, without path'),
    topicPrefixInUse: z.string(),
    timeZoneInUse: z.string(),
    pushPublicKey: z.string().describe('VAPID public key, base64url'),
  })
  .meta({ id: 'NotifySettings' });
export type NotifySettings = z.infer<typeof NotifySettings>;
/** What is kept, with its secrets. */
export const KeptNotifySettings = z.object({ ...settingsShape, pingUrl: HttpUrl.nullable().default(null) });
export type KeptNotifySettings = z.infer<typeof KeptNotifySettings>;

export const NOTIFY_REASONS = ['raised', 'not-acknowledged', 'repeated', 'test', 'alive'] as const;
export const NotifyLogEntry = z
  .object({
    id: z.int(),
    at: EpochMs,
    wayId: Id.nullable(),
    way: z.string().describe('Its name at that time'),
    kind: z.enum(['e-mail', 'webhook', 'push', 'ping']),
    reason: z.enum(NOTIFY_REASONS),
    title: z.string().describe('What was said'),
    outcome: z.enum(['sent', 'failed']),
    code: z.string().nullable().describe('Stable code of what went wrong'),
    detail: z.string().describe('What went wrong, or what the other side answered'),
    attempt: z.int().min(1),
  })
  .meta({ id: 'NotifyLogEntry' });
export type NotifyLogEntry = z.infer<typeof NotifyLogEntry>;

export const NotifyTestResult = z
  .object({ ok: z.boolean(), code: z.string().nullable(), detail: z.string() })
  .meta({ id: 'NotifyTestResult' });
export type NotifyTestResult = z.infer<typeof NotifyTestResult>;

function isTimeZone(zone: string): boolean {
  try {
    return new Intl.DateTimeFormat('en', { timeZone: zone }).format(0) !== '';
  } catch {
    return false;
  }
}
