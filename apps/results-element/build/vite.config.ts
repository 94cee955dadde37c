import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';
import { VERSION } from '../version.js';

const here = (path: string): string => fileURLToPath(new URL(`../${path}`, import.meta.url));

const ELEMENT = 'sectorline-results';
const ENTRIES: Readonly<Record<string, string>> = {
  [ELEMENT]: here('element.ts'),
  announcer: here('announcer.ts'),
  pages: here('pages.css'),
};

/**
 * One entry a build (`--mode NAME`), so that nothing is shared in another file: the element, with its version in the
 * address; what the announcer's page runs; the style of the server's pages.
 */
export default defineConfig(({ mode }) => ({
  root: here('.'),
  clearScreen: false,
  logLevel: 'warn',
  publicDir: false,
  resolve: { conditions: ['source', 'browser', 'module', 'import'] },
  build: {
    target: 'es2022',
    // The oldest browsers that lay out by the width of the table (container queries) and mix colours.
    cssTarget: ['chrome111', 'firefox113', 'safari16.4'],
    emptyOutDir: false,
    modulePreload: false,
    rolldownOptions: {
      input: { [mode]: ENTRIES[mode]! },
      output: {
        entryFileNames: mode === ELEMENT ? `element/${VERSION}/[name].js` : '[name].js',
        assetFileNames: '[name][extname]',
      },
    },
  },
}));
