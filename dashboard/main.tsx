import '@fontsource-variable/atkinson-hyperlegible-next/index.css';
import 'uplot/dist/uPlot.min.css';
import './theme/tokens.css';
import './theme/base.css';
import './parts/parts.css';
import './parts/page.css';
import './app.css';
import './charts/charts.css';
import './wall/wall.css';
import './wall/lane.css';
import './wall/dialogs.css';
import './wall/foot.css';
import './wall/banner.css';
import './wall/band.css';
import './wall/blind.css';
import { render } from 'preact';
import { createApi } from './api/client.ts';
import { App } from './app.tsx';
import { browserWorld, liveAddress } from './feed/browser-world.ts';
import { startFeed } from './feed/feed.ts';
import { followAddress } from './router.ts';
import { followScheme } from './theme/scheme.ts';
import { createVoice } from './wall/sound.ts';
import { startSound } from './wall/start-sound.ts';

followScheme();
followAddress();
const feed = startFeed(liveAddress(window.location), browserWorld);
const shell = {
  api: createApi((address, init) => window.fetch(address, init)),
  feed,
  sound: startSound(feed, createVoice()),
};
const root = document.getElementById('app');
if (root === null) throw new Error('page-incomplete: index.html has no element with the id "app"');
render(<App shell={shell} />, root);
