import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';
import { keptInBuild } from './src/web/kept/in-build.js';

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
        // the reader of letters asks for its data by this name in whatever folder it is told
        assetFileNames: ({ names }) =>
          names[0]?.startsWith('eng.traineddata')
            ? 'assets/[hash]/[name][extname]'
            : 'assets/[name]-[hash][extname]',
      },
    },
  },
  worker: { format: 'es' },
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
