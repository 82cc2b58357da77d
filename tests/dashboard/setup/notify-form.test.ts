import { describe, expect, it } from 'vitest';
import { ApiError } from '../../../dashboard/api/error.ts';
import { refusedAt } from '../../../dashboard/setup/notify-refused.ts';
import { checkShared, sharedTexts } from '../../../dashboard/setup/notify-settings-form.ts';
import { bytesOf, pushObstacle } from '../../../dashboard/setup/notify-subscribe.ts';
import { checkWay, wayTexts } from '../../../dashboard/setup/notify-way-form.ts';
import { ruleText } from '../../../dashboard/words/notify.ts';
import { NotifyWay } from '../../../hub/contract/notify.ts';

const WAY = NotifyWay.parse({
  id: 'w',
  name: 'Mailbox',
  enabled: true,
  rule: { priorities: ['danger'], hours: { days: [5, 1], from: '22:00', to: '06:00' }, repeatMinutes: 15 },
  target: {
    kind: 'e-mail',
    host: 'mail.example',
    port: 587,
    security: 'starttls',
    user: 'hub',
    from: 'hub@shop.example',
    to: ['a@shop.example', 'b@shop.example'],
    hasPassword: true,
  },
  trouble: null,
  createdAt: 0,
});

describe('the form of a way', () => {
  it('comes back as it was, and leaves a password alone that nobody typed', () => {
    const { value, faults } = checkWay(wayTexts(WAY));
    expect(faults).toEqual({});
    expect(value?.rule).toEqual(WAY.rule);
    const { hasPassword: _, ...target } = WAY.target as typeof WAY.target & { hasPassword: boolean };
    expect(value?.target).toEqual(target);
    expect(value?.target).not.toHaveProperty('password');
  });

  it('names every fault by its field, recipients and days as one field each', () => {
    const texts = {
      ...wayTexts(WAY),
      to: 'a@shop.example\nnobody',
      days: [],
      port: 'x',
      after: '-1',
      hoursTo: '25:00',
    };
    const { value, faults } = checkWay(texts);
    expect(value).toBeNull();
    expect(new Set(Object.keys(faults))).toEqual(
      new Set(['rule.afterMinutes', 'rule.hours.days', 'rule.hours.to', 'target.port', 'target.to']),
    );
  });

  it('shows beside a field what the hub refused about it or about one of its lines', () => {
    const problem = {
      type: '',
      title: '',
      status: 400,
      code: 'invalid-request',
      errors: [
        { path: '/target/to/1', message: 'one plain mail address' },
        { path: '/target/password', message: 'signing in needs a password' },
      ],
    };
    const error = new ApiError('refused', '', { status: 400, problem });
    expect(refusedAt(error, 'target.to')).toBe('one plain mail address');
    expect(refusedAt(error, 'target.password')).toBe('signing in needs a password');
    expect(refusedAt(error, 'target.pass')).toBeUndefined();
    expect(refusedAt(new Error('x'), 'target.to')).toBeUndefined();
  });

  it('says a rule in one line, the days in order', () => {
    expect(ruleText(WAY.rule)).toBe(
      'Dangers; at once; again every 15 min; Mon Fri 22:00 to 06:00; dangers at any hour',
    );
  });
});

describe('the form of what all ways share', () => {
  const settings = {
    timeZone: null,
    topicPrefix: null,
    heartbeatSeconds: 10,
    allowedNetworks: ['192.168.1.0/24'],
    contact: null,
    pingEveryMinutes: 5,
    pingOrigin: 'https://ping.example',
    topicPrefixInUse: 'soakwatch-out/x',
    timeZoneInUse: 'UTC',
    pushPublicKey: 'x',
  };

  it('leaves the address of the ping alone unless one is typed', () => {
    expect(checkShared(sharedTexts(settings)).value).not.toHaveProperty('pingUrl');
    const typed = {
      ...sharedTexts(settings),
      pingUrl: 'https://other.example/k',
      networks: '10.0.0.1, 10.0.0.2',
    };
    expect(checkShared(typed).value).toMatchObject({
      pingUrl: 'https://other.example/k',
      allowedNetworks: ['10.0.0.1', '10.0.0.2'],
    });
  });

  it('points at what does not fit', () => {
    const texts = { ...sharedTexts(settings), timeZone: 'Nowhere', prefix: 'soakwatch/x', heartbeat: '' };
    expect(new Set(Object.keys(checkShared(texts).faults))).toEqual(
      new Set(['heartbeatSeconds', 'timeZone', 'topicPrefix']),
    );
  });
});

describe('push of this browser', () => {
  it('says that it needs HTTPS before anything else', () => {
    expect(pushObstacle({ isSecureContext: false, hasPush: false })).toMatch(/HTTPS/);
    expect(pushObstacle({ isSecureContext: true, hasPush: false })).toMatch(/does not know/);
    expect(pushObstacle({ isSecureContext: true, hasPush: true })).toBeNull();
  });

  it('reads the key of the hub (RFC 4648 section 10 and the url alphabet of section 5)', () => {
    expect(new TextDecoder().decode(bytesOf('Zm9vYmE'))).toBe('fooba');
    expect([...bytesOf('-_8')]).toEqual([0xfb, 0xff]);
  });
});
