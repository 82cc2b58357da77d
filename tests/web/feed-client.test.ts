import { describe, expect, it } from 'vitest';
import { FeedClient, type FeedItem } from '../../hub/web/feed-client.ts';

class Socket {
  bufferedAmount = 0;
  readonly sent: string[] = [];
  closed: number | null = null;
  send(text: string): void {
    this.sent.push(text);
  }
  close(code: number): void {
    this.closed = code;
  }
}

const item = (seq: number, key: string | null): FeedItem => ({ seq, key, text: `${seq}` });

describe('a wall that reads slowly', () => {
  it('gets everything at once while it keeps up', () => {
    const socket = new Socket();
    new FeedClient(socket).offer([item(1, 'a'), item(2, 'a'), item(3, null)], 0);
    expect(socket.sent).toEqual(['2', '3']);
  });

  it('is given only the newest per key when it catches up, and every alarm', () => {
    const socket = new Socket();
    const client = new FeedClient(socket);
    socket.bufferedAmount = 1e9;
    for (let seq = 1; seq <= 5000; seq++)
      client.offer([item(seq, seq % 10 === 0 ? null : `reading:${seq % 3}`)], seq);
    expect(client.pendingCount).toBeLessThan(510);
    socket.bufferedAmount = 0;
    client.flush(5001);
    expect(socket.sent).toHaveLength(503);
    expect(socket.sent.map(Number)).toEqual([...socket.sent.map(Number)].sort((a, b) => a - b));
  });

  it('is let go after twenty seconds of not reading, and holds no memory then', () => {
    const socket = new Socket();
    const client = new FeedClient(socket);
    socket.bufferedAmount = 1e9;
    expect(client.offer([item(1, 'a')], 0)).toBe(true);
    expect(client.offer([item(2, 'b')], 20_000)).toBe(true);
    expect(client.offer([item(3, 'c')], 20_001)).toBe(false);
    expect(socket.closed).toBe(1013);
    expect(client.pendingCount).toBe(0);
  });
});
