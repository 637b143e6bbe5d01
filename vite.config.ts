import react from '@vitejs/plugin-react';
import { defineConfig, type Plugin } from 'vite';
import { keptInBuild } from './src/web/kept/in-build.js';

/**
 * The reader of letters asks for its data by this name in whatever folder it is told; a name without an ending would end in a
 * dot, which not every system keeps.
 */
function assetFileNames({ names: [name = ''] }: { readonly names: readonly string[] }): string {
  if (name.startsWith('eng.traineddata')) return 'assets/[hash]/[name][extname]';
  return `assets/[name]-[hash]${name.includes('.') ? '[extname]' : '.bin'}`;
}

/** The recognizer brings a stand-in for Blob, which asks a worker for a document: every browser of today has one of its own. */
const ownBlob = (): Plugin => ({
  name: 'own-blob',
  enforce: 'pre',
  resolveId: (id) => (id === 'blob-polyfill' ? '\0own-blob' : undefined),
  load: (id) => (id === '\0own-blob' ? 'export const { Blob } = globalThis;' : undefined),
});

export default defineConfig({
  root: 'src/web',
  base: '/',
  plugins: [react(), keptInBuild()],
  build: {
    outDir: '../../dist/web',
    emptyOutDir: true,
    target: 'es2022',
    chunkSizeWarningLimit: 1200,
    rolldownOptions: {
      input: { index: 'src/web/index.html', sw: 'src/web/kept/service-worker.ts' },
      // the service worker's place says for which pages it stands: for all
      output: {
        entryFileNames: ({ name }) => (name === 'sw' ? 'sw.js' : 'assets/[name]-[hash].js'),
        assetFileNames,
      },
    },
  },
  worker: { format: 'es', plugins: () => [ownBlob()], rolldownOptions: { output: { assetFileNames } } },
  server: {
    proxy: {
      '/api': {
        target: 'http://127.0.0.1:4310',
        changeOrigin: true,
        headers: { origin: 'http://127.0.0.1:4310' },
      },
    },
  },
});
