import react from '@vitejs/plugin-react';
import { defineConfig } from 'vitest/config';

// Cross-origin isolation lets the workers share memory; the served app needs nothing from elsewhere.
const headers = {
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Embedder-Policy': 'require-corp',
};
const port = Number(process.env.PORT ?? 4173);

export default defineConfig({
  root: 'src',
  base: './',
  publicDir: '../data-samples',
  plugins: [react()],
  build: {
    outDir: '../.dist',
    emptyOutDir: true,
    target: 'es2023',
    chunkSizeWarningLimit: 2000,
    // The map's library by itself: it is nearly half of all code, and stays the same when ours changes.
    rolldownOptions: {
      output: { codeSplitting: { groups: [{ name: 'map-library', test: /node_modules[\\/]maplibre-gl/ }] } },
    },
  },
  worker: { format: 'es' },
  server: { port, headers },
  preview: { port, strictPort: true, headers },
  test: {
    root: '.',
    include: ['tests/**/*.test.{ts,tsx}'],
    exclude: ['tests/e2e/**', 'node_modules/**'],
    environment: 'node',
    testTimeout: 60_000,
  },
});
