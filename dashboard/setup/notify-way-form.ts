import { type NotifyWay, NotifyWayDraft } from '../../hub/contract/notify.ts';
import type { WayChange } from '../api/notify-client.ts';
import { type Faults, faultsOf } from '../parts/faults.ts';
import type { Checked } from './use-text-form.ts';

/** A way of reaching people as texts. Push has no address to type: it is kept as it is. */

export type WayKind = NotifyWay['target']['kind'];
export type Which = 'danger' | 'danger+warning' | 'warning';

export interface WayTexts {
  readonly name: string;
  readonly enabled: 'yes' | 'no';
  readonly kind: WayKind;
  readonly host: string;
  readonly port: string;
  readonly security: 'tls' | 'starttls' | 'none';
  readonly user: string;
  readonly password: string;
  readonly from: string;
  readonly to: string;
  readonly url: string;
  readonly secret: string;
  readonly which: Which;
  readonly hours: 'any' | 'some';
  readonly days: readonly number[];
  readonly hoursFrom: string;
  readonly hoursTo: string;
  readonly dangerAnyHour: 'yes' | 'no';
  readonly after: string;
  readonly repeat: string;
}

const NEW: WayTexts = {
  name: '',
  enabled: 'yes',
  kind: 'e-mail',
  host: '',
  port: '465',
  security: 'tls',
  user: '',
  password: '',
  from: '',
  to: '',
  url: '',
  secret: '',
  which: 'danger',
  hours: 'any',
  days: [1, 2, 3, 4, 5],
  hoursFrom: '07:00',
  hoursTo: '17:00',
  dangerAnyHour: 'yes',
  after: '0',
  repeat: '',
};

export function wayTexts(way: NotifyWay | null): WayTexts {
  if (way === null) return NEW;
  const { rule, target } = way;
  const mail =
    target.kind === 'e-mail'
      ? {
          host: target.host,
          port: String(target.port),
          security: target.security,
          user: target.user,
          from: target.from,
          to: target.to.join('\n'),
        }
      : {};
  const hours =
    rule.hours === null
      ? {}
      : { hours: 'some' as const, days: rule.hours.days, hoursFrom: rule.hours.from, hoursTo: rule.hours.to };
  return {
    ...NEW,
    ...mail,
    ...hours,
    name: way.name,
    enabled: way.enabled ? 'yes' : 'no',
    kind: target.kind,
    which: whichOf(rule.priorities),
    dangerAnyHour: rule.dangerAnyHour ? 'yes' : 'no',
    after: String(rule.afterMinutes),
    repeat: rule.repeatMinutes === null ? '' : String(rule.repeatMinutes),
  };
}

function whichOf(priorities: readonly string[]): Which {
  if (priorities.length === 2) return 'danger+warning';
  return priorities[0] === 'warning' ? 'warning' : 'danger';
}

const lines = (text: string): string[] =>
  text
    .split(/[\n,;]/)
    .map((line) => line.trim())
    .filter((line) => line !== '');
const number = (text: string): number => (text.trim() === '' ? Number.NaN : Number(text.replace(',', '.')));

function targetOf(texts: WayTexts) {
  switch (texts.kind) {
    case 'e-mail':
      return {
        kind: 'e-mail',
        host: texts.host,
        port: number(texts.port),
        security: texts.security,
        user: texts.user,
        from: texts.from.trim(),
        to: lines(texts.to),
        ...(texts.password === '' ? {} : { password: texts.password }),
      };
    case 'webhook':
      return {
        kind: 'webhook',
        ...(texts.url.trim() === '' ? {} : { url: texts.url.trim() }),
        ...(texts.secret === '' ? {} : { secret: texts.secret }),
      };
    case 'push':
      return { kind: 'push' };
    default:
      return texts.kind satisfies never;
  }
}

/** What the form means, checked by the contract. Faults by the contract's paths; what only the hub knows it refuses. */
export function checkWay(texts: WayTexts): Checked<WayChange & NotifyWayDraft> {
  const hours =
    texts.hours === 'any'
      ? null
      : { days: texts.days, from: texts.hoursFrom.trim(), to: texts.hoursTo.trim() };
  const parsed = NotifyWayDraft.safeParse({
    name: texts.name,
    enabled: texts.enabled === 'yes',
    rule: {
      priorities: texts.which.split('+'),
      hours,
      dangerAnyHour: texts.dangerAnyHour === 'yes',
      afterMinutes: number(texts.after),
      repeatMinutes: texts.repeat.trim() === '' ? null : number(texts.repeat),
    },
    target: targetOf(texts),
  });
  if (parsed.success) return { value: parsed.data, faults: {} };
  return { value: null, faults: gathered(faultsOf(parsed.error.issues)) };
}

/** Recipients are one field of the form, and so are the days. */
function gathered(faults: Faults): Faults {
  return Object.fromEntries(
    Object.entries(faults).map(([path, fault]) => [
      path.replace(/^(target\.to|rule\.hours\.days)\.\d+$/, '$1'),
      fault,
    ]),
  );
}
