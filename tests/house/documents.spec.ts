import { mentionsIn } from './documents.js';
import { exists, PATHS, readSource } from './repository.js';

const PACKAGE = JSON.parse(readSource('package.json').text) as { scripts: Record<string, string> };
const DOCUMENTS = PATHS.filter((path) => path.endsWith('.md')).map(readSource);

describe('documents', () => {
  it('name only paths that exist', () => {
    const missing = DOCUMENTS.flatMap((document) => {
      const folder = document.path.replace(/[^/]*$/, '');
      const paths = mentionsIn(document).paths;
      const gone = paths.filter((path) => !exists(path) && !exists(folder + path));
      return gone.map((path) => `${document.path} names ${path}`);
    });
    expect(missing).toEqual([]);
  });

  it('name only scripts that exist', () => {
    const missing = DOCUMENTS.flatMap((document) =>
      mentionsIn(document)
        .scripts.filter((script) => !(script in PACKAGE.scripts))
        .map((script) => `${document.path} says npm run ${script}`),
    );
    expect(missing).toEqual([]);
  });
});

describe('the check of documents', () => {
  const text = [
    'Read `libs/rules/README.md` and [the guide](./DEVELOPERS.md#floors), then `npm run --silent recount -- a.json`.',
    'An event is `libs/rules/src/events/<event>.ts`; see [the standard](https://example.org/a) and `npm test`.',
    'A mark is `markCm`; use `npm run bench`.',
  ].join('\n');

  it('finds paths in quotes and links, and scripts', () => {
    expect(mentionsIn({ path: 'README.md', text })).toEqual({
      paths: ['libs/rules/README.md', 'DEVELOPERS.md'],
      scripts: ['recount', 'bench'],
    });
  });
});
