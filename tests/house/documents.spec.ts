import { brokenMentions, mentionsIn } from './documents.js';
import { exists, PATHS, readSource } from './repository.js';

const PACKAGE = JSON.parse(readSource('package.json').text) as Record<
  'scripts' | 'dependencies' | 'devDependencies',
  Record<string, string>
>;
/** Some packages are called like files. */
const PACKAGES = Object.keys({ ...PACKAGE.dependencies, ...PACKAGE.devDependencies });

describe('documents', () => {
  it('name only paths and scripts that exist', () => {
    const repository = {
      exists: (path: string) => PACKAGES.includes(path) || exists(path),
      paths: PATHS,
      scripts: Object.keys(PACKAGE.scripts),
    };
    const documents = PATHS.filter((path) => path.endsWith('.md')).map(readSource);
    expect(documents.flatMap((document) => brokenMentions(document, repository))).toEqual([]);
  });
});

describe('the check of documents', () => {
  const text = [
    'Read `libs/rules/README.md` and [the guide](./DEVELOPERS.md#floors), then `npm run --silent recount -- a.json`.',
    'An event is `libs/rules/src/events/<event>.ts`; see [the standard](https://example.org/a) and `npm test`.',
    'A mark is `markCm`; use `npm run bench`; resolvers are `x.resolver.ts`, and `codes.ts` has the codes.',
  ].join('\n');
  const document = { path: 'docs/guide.md', text };

  it('finds paths in quotes and links, and scripts', () => {
    expect(mentionsIn(document)).toEqual({
      paths: ['libs/rules/README.md', 'codes.ts', 'DEVELOPERS.md'],
      scripts: ['recount', 'bench'],
    });
  });

  it('tells what is missing', () => {
    const there = ['libs/rules/src/codes.ts', 'docs/DEVELOPERS.md'];
    const repository = { exists: (path: string) => there.includes(path), paths: there, scripts: ['bench'] };
    expect(brokenMentions(document, repository)).toEqual([
      'docs/guide.md names libs/rules/README.md',
      'docs/guide.md says npm run recount',
    ]);
  });
});
