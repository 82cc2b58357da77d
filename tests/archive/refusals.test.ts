import { describe, expect, it } from 'vitest';
import { MOST_OF_ALL, MOST_OF_NODE, MOST_OF_REASON } from '../../hub/archive/refusals.ts';
import { intake, openTest, T0 } from './helpers.ts';

function refusal(reason: string, payload: Uint8Array = Buffer.from('{'), detail = 'why') {
  return { topic: 'soakwatch/forge-1/readings', reason, detail, payload };
}

describe('payloads that were refused', () => {
  it('are shown with the raw payload, the newest first', () => {
    const archive = openTest();
    archive.commitIntake([
      intake('forge-1', [], { refusals: [refusal('bad-json'), refusal('bad-unit', Buffer.from('psi?'))] }),
    ]);
    const [newest, oldest] = archive.refusals({ limit: 10 });
    expect(newest).toMatchObject({ reason: 'bad-unit', payloadText: 'psi?', payloadBytes: 4, at: T0 });
    expect(oldest).toMatchObject({ reason: 'bad-json', node: 'forge-1', detail: 'why' });
    expect(archive.refusals({ limit: 1 })).toEqual([newest]);
  });

  it('are told apart by node, by name or by id', () => {
    const archive = openTest();
    for (const node of ['forge-1', 'oven-1']) {
      archive.commitIntake([intake(node, [], { refusals: [refusal('bad-json')] })]);
    }
    const id = archive.node('oven-1')?.id ?? '';
    expect(archive.refusals({ node: 'oven-1', limit: 9 }).map(({ node }) => node)).toEqual(['oven-1']);
    expect(archive.refusals({ node: id, limit: 9 }).map(({ node }) => node)).toEqual(['oven-1']);
    expect(archive.refusals({ node: 'nobody', limit: 9 })).toEqual([]);
  });

  it('keep the start of a huge payload and say how long it was', () => {
    const archive = openTest();
    const payload = Buffer.alloc(2_000_000, 'x');
    archive.commitIntake([intake('forge-1', [], { refusals: [refusal('too-large', payload)] })]);
    const [kept] = archive.refusals({ limit: 1 });
    expect(kept?.payloadText).toBe('x'.repeat(4096));
    expect(kept?.payloadBytes).toBe(2_000_000);
  });

  it('are counted without end and kept within bounds, the last of each reason', () => {
    const archive = openTest();
    archive.commitIntake([intake('forge-1', [], { refusals: [refusal('rare')] })]);
    const flood = Array.from({ length: 300 }, (_, n) => refusal('bad-json', Buffer.from(String(n))));
    archive.commitIntake([intake('forge-1', [], { refusals: flood.slice(0, 200) })]);
    archive.commitIntake([intake('forge-1', [], { refusals: flood.slice(200) })]);
    const kept = archive.refusals({ limit: 1000 });
    expect(archive.node('forge-1')?.refused).toEqual({ rare: 1, 'bad-json': 300 });
    expect(kept).toHaveLength(MOST_OF_REASON + 1);
    expect(kept.slice(0, 2).map(({ payloadText }) => payloadText)).toEqual(['299', '298']);
    expect(kept.at(-1)?.reason).toBe('rare');
  });

  it('are at most fifty of one node, whatever the reasons', () => {
    const archive = openTest();
    const reasons = Array.from({ length: 8 }, (_, n) => `reason-${n}`);
    const refusals = reasons.flatMap((reason) => Array.from({ length: 10 }, () => refusal(reason)));
    archive.commitIntake([intake('forge-1', [], { refusals })]);
    const kept = archive.refusals({ limit: 1000 });
    expect(kept).toHaveLength(MOST_OF_NODE);
    expect(new Set(kept.map(({ reason }) => reason))).toEqual(new Set(reasons.slice(3)));
  });

  it('are bounded over all nodes together', () => {
    const archive = openTest();
    const refusals = ['a', 'b', 'c'].flatMap((reason) => Array(15).fill(refusal(reason)));
    archive.commitIntake(Array.from({ length: 60 }, (_, n) => intake(`node-${n}`, [], { refusals })));
    expect(archive.refusals({ limit: 10_000 })).toHaveLength(MOST_OF_ALL);
    expect(archive.refusals({ node: 'node-59', limit: 100 })).toHaveLength(45);
    expect(archive.refusals({ node: 'node-0', limit: 100 })).toEqual([]);
  });

  it('cannot make the archive keep endless words', () => {
    const archive = openTest();
    const long = 'y'.repeat(100_000);
    const given = { topic: long, reason: 'bad-json', detail: long, payload: Buffer.from('') };
    archive.commitIntake([intake('forge-1', [], { refusals: [given] })]);
    const [kept] = archive.refusals({ limit: 1 });
    expect(kept?.topic.length).toBe(500);
    expect(kept?.detail.length).toBe(500);
  });
});
