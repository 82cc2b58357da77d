import { defineConfig } from 'vite';

export default defineConfig({
  root: 'dashboard',
  base: '/',
  build: { outDir: '../dist/dashboard', emptyOutDir: true, assetsInlineLimit: 0, sourcemap: true },
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
});
