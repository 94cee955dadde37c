// Builds the front end into dist/web unless what lies there was built from the very same sources. Runs before
// `npm start`, and by itself as `npm run build:web`.
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..', '..');
const target = join(root, 'dist', 'web');
const stamp = join(target, 'built-from');

function isBuiltFrom(source) {
  return existsSync(stamp) && readFileSync(stamp, 'utf8') === source;
}

/** One text for all that goes into the build. */
function fingerprint() {
  const hash = createHash('sha256');
  const take = (path) => {
    hash.update(path).update(readFileSync(join(root, path)));
  };
  const walk = (folder) => {
    for (const entry of readdirSync(join(root, folder), { withFileTypes: true })) {
      const path = `${folder}/${entry.name}`;
      if (entry.isDirectory()) walk(path);
      else if (!entry.name.endsWith('.spec.ts')) take(path);
    }
  };
  const sources = [
    'apps/web',
    'apps/results-element',
    'libs/rules/src',
    'libs/scoreboard/src',
    'libs/technique/src',
    'libs/wording/src',
  ];
  for (const folder of sources) walk(folder);
  take('package-lock.json');
  return hash.digest('hex');
}

/** In a folder of its own first: whoever reads dist/web meanwhile finds a whole build, old or new. */
async function build(source) {
  const { build: viteBuild } = await import('vite');
  const outDir = `${target}.${process.pid}`;
  const configOf = (app) => join(root, 'apps', app, 'build', 'vite.config.ts');
  await viteBuild({ configFile: configOf('web'), build: { outDir } });
  for (const mode of ['sectorline-results', 'announcer', 'pages']) {
    await viteBuild({ configFile: configOf('results-element'), mode, build: { outDir } });
  }
  writeFileSync(join(outDir, 'built-from'), source);
  // Somebody else was as quick, and is being read already.
  if (isBuiltFrom(source)) {
    rmSync(outDir, { recursive: true });
    return;
  }
  rmSync(target, { recursive: true, force: true });
  renameSync(outDir, target);
}

const source = fingerprint();
if (!isBuiltFrom(source)) {
  const from = performance.now();
  await build(source);
  console.log(`The pages are built (${Math.round(performance.now() - from)} ms).`);
}

// What a page that embeds the element says of it, so that its browser runs this very file and no other.
for (const version of readdirSync(join(target, 'element'))) {
  const file = `element/${version}/sectorline-results.js`;
  const hash = createHash('sha384')
    .update(readFileSync(join(target, file)))
    .digest('base64');
  if (process.env.npm_lifecycle_event === 'build:web') console.log(`/${file} integrity="sha384-${hash}"`);
}
