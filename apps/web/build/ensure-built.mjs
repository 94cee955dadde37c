// Builds the front end into dist/web unless what lies there was built from the very same sources. Runs before
// `npm start`, and by itself as `npm run build:web`.
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..', '..');
const target = join(root, 'dist', 'web');
const stamp = join(target, 'built-from');

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
  for (const folder of ['apps/web', 'libs/rules/src', 'libs/wording/src']) walk(folder);
  take('package-lock.json');
  return hash.digest('hex');
}

/** In a folder of its own first: whoever reads dist/web meanwhile finds a whole build, old or new. */
async function build(source) {
  const { build: viteBuild } = await import('vite');
  const outDir = `${target}.${process.pid}`;
  await viteBuild({ configFile: join(root, 'apps', 'web', 'build', 'vite.config.ts'), build: { outDir } });
  writeFileSync(join(outDir, 'built-from'), source);
  rmSync(target, { recursive: true, force: true });
  renameSync(outDir, target);
}

const source = fingerprint();
if (!existsSync(stamp) || readFileSync(stamp, 'utf8') !== source) {
  const from = performance.now();
  await build(source);
  console.log(`The desk is built (${Math.round(performance.now() - from)} ms).`);
}
