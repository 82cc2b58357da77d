import { writeSync } from 'node:fs';
import { openArchive } from '../../hub/archive/open.ts';

/**
 * A process to be killed: it commits groups of readings without end, and says the number of each group on its
 * standard output only after the commit has returned. Group n has readings at n*10 .. n*10+9 of value n.
 */
const [path = '', start = '0'] = process.argv.slice(2);
let made = 0;
const ids = () => {
  made += 1;
  return `from-${start}-${made}`;
};
const archive = openArchive({ path, ids, simulated: false, now: 0 });

for (let group = Number(start); ; group += 1) {
  const readings = Array.from({ length: 10 }, (_, n) => ({
    name: n % 2 === 0 ? 'even' : 'odd',
    quantity: 'temperature' as const,
    at: group * 10 + n,
    value: group,
    quality: 'good' as const,
  }));
  archive.commitIntake([{ node: 'forge-1', receivedAt: group, readings, refusals: [] }]);
  writeSync(1, `${group}\n`);
}
