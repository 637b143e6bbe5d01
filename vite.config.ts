import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

export default defineConfig({
  root: 'src/web',
  base: '/',
  plugins: [react()],
  build: { outDir: '../../dist/web', emptyOutDir: true, target: 'es2022', chunkSizeWarningLimit: 1200 },
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
