import { describe, expect, it } from 'vitest';
import { hostAllowed, originAllowed } from '../../hub/web/guard.ts';

const rules = { hostNames: ['forge.local'] };

describe('who may speak to the hub', () => {
  it.each(['localhost:7625', '127.0.0.1', '[::1]:7625', '192.0.2.7:80', 'forge.local:7625'])(
    'answers to %s',
    (host) => {
      expect(hostAllowed(host, rules)).toBe(true);
    },
  );

  it.each(['evil.example', 'evil.example:7625', '', undefined, 'localhost.evil.example'])(
    'does not answer to %s (DNS rebinding)',
    (host) => {
      expect(hostAllowed(host, rules)).toBe(false);
    },
  );

  it("lets its own pages and programs through, and nobody else's pages", () => {
    expect(originAllowed('http://localhost:7625', 'localhost:7625')).toBe(true);
    expect(originAllowed(undefined, 'localhost:7625')).toBe(true);
    expect(originAllowed('http://evil.example', 'localhost:7625')).toBe(false);
    expect(originAllowed('http://localhost:9999', 'localhost:7625')).toBe(false);
    expect(originAllowed('null', 'localhost:7625')).toBe(false);
  });
});
