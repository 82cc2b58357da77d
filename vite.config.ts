import { defineConfig } from 'vite';

export default defineConfig({
  root: 'dashboard',
  base: '/',
  build: {
    outDir: '../dist/dashboard',
    emptyOutDir: true,
    assetsInlineLimit: 0,
    sourcemap: true,
    // One file on purpose: it comes from the hub next door, and a page must open even while that hub is away.
    chunkSizeWarningLimit: 1500,
  },
  // In development the screens come from here, everything else from a hub on its usual port.
  server: {
    proxy: {
      '/api/v1': { target: 'http://127.0.0.1:7625', ws: true },
      '/openapi.json': 'http://127.0.0.1:7625',
    },
  },
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
});
