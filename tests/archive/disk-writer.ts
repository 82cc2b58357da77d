import { writeSync } from 'node:fs';
import { openArchive } from '../../hub/archive/open.ts';

/**
 * A process under a limit of file size (`ulimit -f`): the kernel refuses its writes beyond, just as a failing
 * disk would. It commits until that happens, tries three times more, and says what it met as one line of JSON.
 */
// Without a listener the signal that comes with the refusal would end the process.
process.on('SIGXFSZ', () => undefined);

const [path = ''] = process.argv.slice(2);
let made = 0;
const ids = () => {
  made += 1;
  return `id-${made}`;
};
const archive = openArchive({ path, ids, simulated: false, now: 0 });
const codes: unknown[] = [];
let told = 0;

while (codes.length < 4 && told < 1_000_000) {
  const readings = Array.from({ length: 500 }, (_, n) => ({
    name: 'chamber',
    quantity: 'temperature' as const,
    at: told + n,
    value: n + 0.5,
    quality: 'good' as const,
  }));
  try {
    told += archive.commitIntake([{ node: 'forge-1', receivedAt: 0, readings, refusals: [] }]).readings
      .length;
  } catch (thrown) {
    codes.push(thrown instanceof Error && 'code' in thrown ? thrown.code : String(thrown));
  }
}
const [channel] = archive.channels();
const kept = channel ? archive.readings.range(channel.id, 0, Number.MAX_SAFE_INTEGER).length : 0;
writeSync(1, JSON.stringify({ codes, told, kept, alive: archive.alive() }));
archive.close();
