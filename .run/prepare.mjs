// Brings a fresh clone to the point where it can run: packages, then a build. Only what is out of date is done,
// and each step says what it is doing. Node's own modules only: nothing is installed yet when this runs.
import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const ROOT = dirname(dirname(fileURLToPath(import.meta.url)));

/** Runs a command with its output shown. Rejects when it fails. */
export function run(command, args, options = {}) {
  return new Promise((resolve, reject) => {
    const child = spawn(command, args, { cwd: ROOT, stdio: ['ignore', 'inherit', 'inherit'], ...options });
    child.on('error', reject);
    child.on('exit', (code, signal) => {
      if (code === 0) resolve();
      else reject(new Error(`${command} ${args.join(' ')} ended with ${signal ?? `code ${code}`}`));
    });
  });
}

/** A step with its name before it and its time after it. */
export async function step(name, work) {
  const started = Date.now();
  process.stdout.write(`\n== ${name}\n`);
  await work();
  process.stdout.write(`== ${name}: done in ${((Date.now() - started) / 1000).toFixed(1)} s\n`);
}

export function checkNode() {
  const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);
  if ((major === 20 && minor >= 19) || (major === 22 && minor >= 14) || major > 22) return;
  process.stderr.write(
    `Soakwatch needs Node 20.19 or newer of 20, or 22.14 or newer; this is ${process.versions.node}.\n`,
  );
  process.exit(1);
}

function hashOf(files) {
  const hash = createHash('sha256');
  for (const file of files) hash.update(file).update(readFileSync(join(ROOT, file)));
  return hash.digest('hex');
}

function* filesUnder(folder) {
  for (const entry of readdirSync(join(ROOT, folder), { withFileTypes: true })) {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) yield* filesUnder(path);
    else yield path;
  }
}

function upToDate(stamp, hash) {
  const path = join(ROOT, stamp);
  return existsSync(path) && statSync(path).isFile() && readFileSync(path, 'utf8') === hash;
}

function markDone(stamp, hash) {
  mkdirSync(dirname(join(ROOT, stamp)), { recursive: true });
  writeFileSync(join(ROOT, stamp), hash);
}

export async function install() {
  const hash = hashOf(['package.json', 'package-lock.json']);
  const stamp = 'node_modules/.soakwatch-installed';
  if (upToDate(stamp, hash)) return;
  await step('Installing packages (the database driver may be compiled here: about a minute)', () =>
    run('npm', ['ci', '--no-fund', '--no-audit', '--foreground-scripts', '--include=dev']),
  );
  markDone(stamp, hash);
}

export async function build() {
  const folders = ['hub', 'dashboard', 'sensors-sim'].flatMap((folder) => [...filesUnder(folder)]);
  const hash = hashOf([
    'package-lock.json',
    'tsconfig.json',
    'tsconfig.build.json',
    'vite.config.ts',
    ...folders.sort(),
  ]);
  const stamp = 'dist/.soakwatch-built';
  if (upToDate(stamp, hash)) return;
  await step('Building the hub and the simulator', () => run('npx', ['tsc', '-p', 'tsconfig.build.json']));
  await step('Building the screens', () => run('npx', ['vite', 'build', '--logLevel', 'warn']));
  markDone(stamp, hash);
}

export async function prepare() {
  checkNode();
  await install();
  await build();
}
