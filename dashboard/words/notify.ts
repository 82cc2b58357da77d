import type { AlarmPriority } from '../../hub/contract/alarm.ts';
import type { NotifyLogEntry, NotifyRule, ShownTarget } from '../../hub/contract/notify.ts';

/** Words of "Reaching people" in Setup. */

export const WAY_KIND_WORDS: Readonly<Record<ShownTarget['kind'] | 'ping', string>> = {
  'e-mail': 'E-mail',
  webhook: 'Webhook',
  push: 'Phone or browser',
  ping: 'Sign of life',
};

export const PRIORITY_WORDS: Readonly<Record<AlarmPriority, string>> = {
  danger: 'Dangers',
  warning: 'Warnings',
};

const REASON_WORDS: Readonly<Record<NotifyLogEntry['reason'], string>> = {
  raised: 'New alarm',
  'not-acknowledged': 'Not acknowledged in time',
  repeated: 'Again, not acknowledged',
  test: 'Test',
  alive: 'Sign of life',
};

const DAYS = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];

export const notifyWords = {
  section: 'Reaching people',
  caution:
    'This is an aid. It does not replace a certified alarm, and no message is sure to arrive: networks, mail and phones fail, and then nobody is told. Silence does not mean that all is well.',
  caption: 'Ways of reaching people',
  empty: 'None yet: alarms are seen and heard at the wall alone.',
  add: 'Add e-mail or webhook',
  addThis: 'Add this way',
  edit: (name: string) => `Change ${name}`,
  remove: (name: string) => `Remove ${name}`,
  removeShort: 'Remove',
  removeTitle: (name: string) => `Remove ${name}?`,
  removeLong: 'Nobody is told by it any more, and its password or secret is forgotten.',
  test: 'Test',
  testOf: (name: string) => `Test ${name}`,
  testSent: 'The test was taken over by the other side. See that it arrives.',
  testFailed: (detail: string) => `The test did not get through: ${detail}`,
  way: 'Way',
  name: 'Name',
  nameHint: 'Whose mailbox, which watchman.',
  kind: 'Kind',
  to: 'Goes to',
  when: 'When',
  state: 'State',
  untried: 'Never tried: press Test',
  lastSent: (at: string) => `Last sent ${at}`,
  lastFailed: (at: string, detail: string) => `Failed ${at}: ${detail}`,
  off: 'Off',
  trouble: (since: string, detail: string) => `Does not get through since ${since}: ${detail}`,
  host: 'Mail server',
  hostHint: 'Such as mail.example.org. One in the shop’s own network must be allowed below.',
  port: 'Port',
  security: 'Encryption',
  securityOptions: {
    tls: 'TLS from the start (mostly port 465)',
    starttls: 'STARTTLS, required (mostly port 587)',
    none: 'None: without user and password only',
  },
  user: 'User',
  userHint: 'Empty: the server wants no sign-in.',
  password: 'Password',
  passwordHint: 'Kept in the hub and never shown.',
  passwordKept: 'Leave empty to keep the one that is there.',
  from: 'From',
  recipients: 'To',
  recipientsHint: 'Mail addresses, one a line.',
  url: 'Address',
  urlHint: 'An https:// address. It may hold a key, so only its beginning is shown later.',
  urlKept: (origin: string) => `Leave empty to keep the one at ${origin}.`,
  secret: 'Secret for the signature',
  secretHint: 'At least 16 characters, the same at the receiver. Kept in the hub and never shown.',
  rule: 'Which alarms, and when',
  priorities: 'Alarms',
  priorityOptions: {
    danger: 'Dangers alone',
    'danger+warning': 'Dangers and warnings',
    warning: 'Warnings alone',
  },
  hours: 'Hours',
  hoursOptions: { any: 'At any hour', some: 'On these days, from and to' },
  days: 'Days',
  dayName: (day: number) => DAYS[day - 1] ?? '',
  hoursFrom: 'From',
  hoursTo: 'To',
  hoursHint: 'On the shop’s clock, as 07:30. Past midnight if the end is earlier.',
  dangerAnyHour: 'A danger at any hour too',
  after: 'Only if not acknowledged within',
  afterHint: '0: at once. Another number makes this the next person to call.',
  repeat: 'Again every',
  repeatHint: 'While nobody has acknowledged it. Empty: once.',
  minutes: 'min',
  enabled: 'In use',
  yes: 'Yes',
  no: 'No',
  log: 'What was sent',
  logEmpty: 'Nothing yet.',
  logAgain: 'Look again',
  at: 'Time',
  what: 'What',
  outcome: 'Outcome',
  sent: 'Sent',
  failed: (detail: string) => `Failed: ${detail}`,
  reason: (entry: Pick<NotifyLogEntry, 'reason' | 'attempt'>) =>
    `${REASON_WORDS[entry.reason]}${entry.attempt > 1 ? `, attempt ${entry.attempt}` : ''}`,
} as const;

export const pushWords = {
  title: 'This phone or browser',
  long: 'Alarms as notifications of this device, through the push service of its browser: that needs the internet on both sides.',
  insecure:
    'This page was opened over plain HTTP. Push needs HTTPS, or the hub’s own computer (localhost): open the wall by such an address on this device.',
  unsupported: 'This browser does not know push notifications.',
  needsContact: 'First enter a contact below: push services want to know whom to write to.',
  name: 'What this device is called',
  add: 'Tell this device',
  refused: 'The browser does not allow notifications for this page: allow them in its settings.',
  failed: (why: string) => `The browser could not subscribe: ${why}`,
} as const;

export const notifySettingsWords = {
  title: 'What all ways share',
  timeZone: 'Time zone of the shop',
  timeZoneHint: (used: string) => `Such as Europe/Berlin. Empty: as the hub’s computer (${used} now).`,
  contact: 'Contact',
  contactHint: 'A mail address. Push services are told it and nobody else.',
  networks: 'Own networks that may be sent to',
  networksHint:
    'One a line, such as 192.168.1.0/24. Without it the hub sends to public addresses alone, so that nobody can make it knock at machines in the shop.',
  light: 'Stack light, siren and heartbeat over MQTT',
  prefix: 'Topics begin with',
  prefixHint: (used: string) => `Empty: ${used}. Now published below ${used}/light and ${used}/heartbeat.`,
  heartbeat: 'A heartbeat every',
  seconds: 's',
  heartbeatHint: 'A light that misses three of them must show that nobody is watching.',
  ping: 'Sign of life to a service outside',
  pingUrl: 'Address to call',
  pingHint: 'A service that raises an alarm when these calls stop. It may hold a key and is not shown again.',
  pingKept: (origin: string) => `Now calling ${origin}. Leave empty to keep it.`,
  pingEvery: 'Every',
  pingStop: 'Stop calling',
} as const;

/** "Dangers and warnings, after 10 min, 22:00 to 06:00 Mon Tue". */
export function ruleText(rule: NotifyRule): string {
  const which = rule.priorities.map((priority) => PRIORITY_WORDS[priority]).join(', ');
  const after = rule.afterMinutes > 0 ? `if not acknowledged in ${rule.afterMinutes} min` : 'at once';
  const again = rule.repeatMinutes === null ? '' : `again every ${rule.repeatMinutes} min`;
  const { hours } = rule;
  const days =
    hours === null
      ? ''
      : [...hours.days]
          .sort((a, b) => a - b)
          .map(notifyWords.dayName)
          .join(' ');
  const when = hours === null ? '' : `${days} ${hours.from} to ${hours.to}`;
  const always = hours !== null && rule.dangerAnyHour ? 'dangers at any hour' : '';
  return [which, after, again, when, always].filter((part) => part !== '').join('; ');
}
