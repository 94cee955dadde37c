import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';
import { precacheList } from './precache-list.js';

const here = (path: string): string => fileURLToPath(new URL(`../${path}`, import.meta.url));

/** Pages and the worker that keeps them; what is named by its content lies in `web/` and never changes. */
export default defineConfig({
  root: here('.'),
  clearScreen: false,
  logLevel: 'warn',
  resolve: { conditions: ['source', 'browser', 'module', 'import'] },
  build: {
    assetsDir: 'web',
    target: 'es2022',
    emptyOutDir: true,
    modulePreload: { polyfill: false },
    rolldownOptions: {
      input: {
        desk: here('desk.html'),
        office: here('office.html'),
        notebook: here('notebook.html'),
        'offline.worker': here('offline/worker.ts'),
      },
      output: {
        entryFileNames: ({ name }) => (name === 'offline.worker' ? '[name].js' : 'web/[name]-[hash].js'),
      },
    },
  },
  plugins: [precacheList('offline.worker.js', ['desk', 'notebook'])],
});
