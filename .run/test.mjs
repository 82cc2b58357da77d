// npm test: everything that is checked, in one command, on a machine that may have only Node and npm.
import { execFileSync } from 'node:child_process';
import { build, checkNode, install, run, step } from './prepare.mjs';

/** What the tests use of Debian: a browser for the screens, a broker and clients that are not ours. */
const NEEDED = [
  { program: 'chromium', packages: ['chromium'] },
  { program: 'mosquitto', packages: ['mosquitto'] },
  { program: 'mosquitto_pub', packages: ['mosquitto-clients'] },
];

function has(program) {
  try {
    execFileSync('sh', ['-c', `PATH="$PATH:/usr/sbin" command -v ${program}`], { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
}

async function installPrograms() {
  const packages = NEEDED.filter(({ program }) => !has(program)).flatMap((need) => need.packages);
  if (packages.length === 0) return;
  if (process.getuid?.() !== 0) {
    process.stderr.write(
      `The tests need Debian's ${packages.join(', ')}: install them (as root: apt-get install ${packages.join(' ')}) and run npm test again.\n`,
    );
    process.exit(1);
  }
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  await step(`Installing ${packages.join(', ')}`, async () => {
    await run('apt-get', ['update', '-qq'], { env });
    await run('apt-get', ['install', '-y', '-qq', '--no-install-recommends', ...packages], { env });
  });
}

const started = Date.now();
try {
  checkNode();
  await install();
  await installPrograms();
  await step('Format and lint', () => run('npx', ['biome', 'check', '--error-on-warnings', '.']));
  await step('Types', () => run('npx', ['tsc', '--noEmit']));
  await build();
  await step('Unit, scenario and fault tests', () => run('npx', ['vitest', 'run']));
  await step('Browser tests', () => run('npx', ['vitest', 'run', '--config', 'vitest.e2e.config.ts']));
} catch (fault) {
  process.stderr.write(`\nFAILED: ${fault instanceof Error ? fault.message : fault}\n`);
  process.exit(1);
}
process.stdout.write(`\nEverything passed in ${((Date.now() - started) / 1000).toFixed(0)} s.\n`);
