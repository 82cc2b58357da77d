import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FIRST_WAIT_MS, MOST_WAIT_MS, reconnectWaitMs } from '../../../dashboard/feed/backoff.ts';
import { isBlind, type Link, type LinkEvent, startLink, stepLink } from '../../../dashboard/feed/link.ts';

const tick = (atMs: number, chance = 0.5): LinkEvent => ({ kind: 'tick', atMs, chance });
const message = (atMs: number): LinkEvent => ({ kind: 'message', atMs });
const closed = (atMs: number, chance = 0.5): LinkEvent => ({ kind: 'closed', atMs, chance });

function run(events: readonly LinkEvent[]): { link: Link; commands: string[] } {
  let { link } = startLink(0);
  const commands: string[] = [];
  for (const event of events) {
    const step = stepLink(link, event);
    link = step.link;
    if (step.command !== 'nothing') commands.push(`${step.command}@${event.atMs}`);
  }
  return { link, commands };
}

describe('the connection', () => {
  it('is not blind in the first five seconds of a page, and is after them', () => {
    const { link } = run([tick(500), tick(4500)]);
    expect(isBlind(link, 4999)).toBe(false);
    expect(isBlind(link, 5000)).toBe(true);
  });

  it('goes blind five seconds after the last message, drops the silent socket and tries again', () => {
    const { link, commands } = run([message(1000), tick(5500), tick(6000), tick(6300)]);
    expect(commands).toEqual(['drop@6000', 'open@6300']);
    expect(isBlind(link, 6300)).toBe(true);
    expect(isBlind(run([message(1000)]).link, 5999)).toBe(false);
  });

  it('is blind at once when the socket closes, and sees again with the first message', () => {
    const lost = run([message(1000), closed(2000)]);
    expect(isBlind(lost.link, 2000)).toBe(true);
    const back = run([message(1000), closed(2000), tick(2300), message(2400)]);
    expect(back.commands).toEqual(['open@2300']);
    expect(isBlind(back.link, 2400)).toBe(false);
  });

  it('is not blind merely because a socket opened: only a message is a sign of life', () => {
    const { link } = run([message(1000), closed(2000), tick(2300), tick(4000)]);
    expect(link.socket).toBe('opening');
    expect(isBlind(link, 4000)).toBe(true);
  });

  it('gives up a socket that does not open', () => {
    const { commands } = run([closed(100, 0), tick(100), tick(8000), tick(8100)]);
    expect(commands).toEqual(['open@100', 'drop@8100']);
  });

  it('plans one retry when a socket that it dropped reports its end as well', () => {
    const { link } = run([message(0), tick(5000, 0.9), closed(5100, 0.1)]);
    expect(link.attempt).toBe(1);
    expect(link.retryAtMs).toBe(5000 + reconnectWaitMs(0, 0.9));
  });

  it('asks anew when what came does not fit, and forgets earlier failures once it is heard again', () => {
    const { link, commands } = run([
      message(0),
      { kind: 'resync', atMs: 50, chance: 0 },
      tick(500),
      message(600),
    ]);
    expect(commands).toEqual(['drop@50', 'open@500']);
    expect(link.attempt).toBe(0);
  });
});

describe('the wait before a reconnect', () => {
  it('lies anywhere below a bound that doubles up to ten seconds', () => {
    expect(reconnectWaitMs(0, 0.999)).toBeLessThan(FIRST_WAIT_MS);
    expect(reconnectWaitMs(3, 0.5)).toBe((FIRST_WAIT_MS * 8) / 2);
    expect(reconnectWaitMs(1000, 0.5)).toBe(MOST_WAIT_MS / 2);
  });

  it('never leaves its bounds', () => {
    fc.assert(
      fc.property(fc.nat(10_000), fc.double({ min: 0, max: 0.999_999, noNaN: true }), (attempt, chance) => {
        const wait = reconnectWaitMs(attempt, chance);
        expect(wait).toBeGreaterThanOrEqual(0);
        expect(wait).toBeLessThan(MOST_WAIT_MS);
      }),
    );
  });
});
