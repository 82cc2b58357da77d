import { prepare } from './prepare.mjs';

await prepare();
