// npm start: the hub for a real shop. Flags after `--` go to the hub (npm start -- --help lists them).
import { spawn } from 'node:child_process';
import { prepare, ROOT } from './prepare.mjs';

await prepare();
const hub = spawn(process.execPath, ['dist/hub/main.js', ...process.argv.slice(2)], {
  cwd: ROOT,
  stdio: 'inherit',
});
// The terminal's Ctrl-C reaches the hub itself; here we only wait for it to end in good order.
process.on('SIGINT', () => {});
process.on('SIGTERM', () => hub.kill('SIGTERM'));
hub.on('exit', (code) => process.exit(code ?? 1));
