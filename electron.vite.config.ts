import react from '@vitejs/plugin-react';
import { defineConfig } from 'electron-vite';

/** Everything is bundled: the packed program carries no node_modules. */
export default defineConfig({
  main: {
    build: {
      outDir: 'out/main',
      externalizeDeps: false,
      rollupOptions: { input: { main: 'electron/main/main.ts' }, external: ['electron'] },
    },
  },
  preload: {
    build: {
      outDir: 'out/preload',
      externalizeDeps: false,
      rollupOptions: {
        input: { preload: 'electron/preload/preload.ts' },
        external: ['electron'],
        output: { format: 'cjs', entryFileNames: '[name].cjs' },
      },
    },
  },
  renderer: {
    root: 'renderer',
    plugins: [react()],
    worker: { format: 'es' },
    build: {
      outDir: 'out/renderer',
      minify: true,
      assetsInlineLimit: 0,
      chunkSizeWarningLimit: 2000,
      rollupOptions: { input: { index: 'renderer/index.html' } },
    },
  },
});
