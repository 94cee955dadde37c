import type { ComponentType } from 'preact';
import { e, type EntriesKey } from '../../labels/entries/words.js';
import { useOffice, type Office } from '../office.js';
import { BibsPart } from './BibsPart.jsx';
import { CopyPart } from './CopyPart.jsx';
import { EntryPart } from './EntryPart.jsx';
import { ImportPart } from './ImportPart.jsx';
import { ListPart } from './ListPart.jsx';
import { TermsPart } from './TermsPart.jsx';
import './entries.css';

interface Part {
  readonly title: EntriesKey;
  readonly Body: ComponentType;
  /** For whom it is; absent: for everybody who directs the meet. */
  readonly isFor?: (office: Office) => boolean;
}

const PARTS: readonly Part[] = [
  { title: 'import.title', Body: ImportPart },
  { title: 'entry.title', Body: EntryPart },
  { title: 'list.title', Body: ListPart },
  { title: 'terms.title', Body: TermsPart },
  { title: 'bibs.title', Body: BibsPart },
  { title: 'copy.title', Body: CopyPart, isFor: ({ isAdmin }) => isAdmin },
];

/** Who competes: from a table or one by one, until when, under which bib, in which order. */
export function EntriesScreen() {
  const office = useOffice();
  // Another meet begins with empty forms.
  return (
    <section class="entries-screen" key={office.meetId.value}>
      <h2>{e('title')}</h2>
      {PARTS.filter(({ isFor }) => isFor?.(office) ?? true).map(({ title, Body }, at) => (
        <details key={title} class="part" open={at === 0}>
          <summary>
            <h3>{e(title)}</h3>
          </summary>
          <div class="part-body">
            <Body />
          </div>
        </details>
      ))}
    </section>
  );
}
