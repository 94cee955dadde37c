import { notebook, type FaultChangeBody, type Reads } from '#persistence';
import { isTechniqueEvent, type FaultDraft, type TechniqueEvent, type Vocabulary } from '#technique';
import { Injectable } from '@nestjs/common';
import { fingerprintOf } from '../platform/competition/fingerprint.js';
import { Database } from '../platform/database/database.js';
import { ID_REUSED } from '../platform/errors/outcomes.js';
import { refusal, type Refusal } from '../platform/errors/user-error.types.js';
import type { Identity } from '../platform/identity/identity.js';
import { isGiven } from '../platform/inputs/given.js';
import { uuidV7 } from '../platform/inputs/uuid-v7.js';
import type {
  FaultChangeInput,
  FaultDefineInput,
  FaultDraftInput,
  FaultSplitInput,
} from './vocabulary.inputs.js';
import { changeOf, vocabularyOf } from './vocabulary.js';

export interface VocabularyNow {
  readonly vocabulary: Vocabulary;
  /** How many changes it has come through. */
  readonly version: number;
}

export type FaultsChanged =
  | { readonly codes: readonly string[]; readonly replayed: boolean }
  | { readonly refusal: Refusal };

/** The words that an organisation's coaches note faults with: those built in, and their own. */
@Injectable()
export class VocabularyService {
  constructor(private readonly database: Database) {}

  async current(organisationId: string): Promise<VocabularyNow> {
    return this.database.read((at) => this.read(at, organisationId));
  }

  async read(at: Reads, organisationId: string): Promise<VocabularyNow> {
    const changes = await notebook.faultChanges(at, organisationId);
    return { vocabulary: vocabularyOf(changes), version: changes.length };
  }

  async define({ id, draft }: FaultDefineInput, viewer: Identity): Promise<FaultsChanged> {
    const drafted = draftOf(draft);
    if (drafted === null) return { refusal: notTaught(['draft', 'event']) };
    return this.change(id, { kind: 'define', drafts: [drafted] }, viewer);
  }

  async split({ id, code, drafts }: FaultSplitInput, viewer: Identity): Promise<FaultsChanged> {
    const drafted = drafts.map(draftOf);
    const unknown = drafted.indexOf(null);
    if (unknown >= 0) return { refusal: notTaught(['drafts', String(unknown), 'event']) };
    const known = drafted.flatMap((one) => one ?? []);
    return this.change(id, { kind: 'split', code, drafts: known }, viewer);
  }

  async changeOne(input: FaultChangeInput, viewer: Identity): Promise<FaultsChanged> {
    const { kind, code } = input;
    if (kind === 'rename') {
      if (!isGiven(input.name)) return { refusal: missing('name') };
      return this.change(input.id, { kind, code, name: input.name }, viewer);
    }
    if (kind === 'merge') {
      if (!isGiven(input.into)) return { refusal: missing('into') };
      return this.change(input.id, { kind, code, into: input.into }, viewer);
    }
    return this.change(input.id, { kind, code }, viewer);
  }

  private async change(
    ownId: string | null | undefined,
    body: FaultChangeBody,
    viewer: Identity,
  ): Promise<FaultsChanged> {
    const { organisationId } = viewer;
    const { personId } = viewer.requireAccount();
    const id = ownId ?? uuidV7();
    const fingerprint = fingerprintOf(organisationId, body);
    return this.database.write(async (tx): Promise<FaultsChanged> => {
      await notebook.lockVocabulary(tx, organisationId);
      const changes = await notebook.faultChanges(tx, organisationId);
      const there = changes.findIndex((one) => one.id === id);
      if (there >= 0) {
        if (changes[there]!.fingerprint !== fingerprint) return { refusal: ID_REUSED };
        const then = changeOf(vocabularyOf(changes.slice(0, there)), body);
        return { codes: then.kind === 'changed' ? then.codes : [], replayed: true };
      }
      const result = changeOf(vocabularyOf(changes), body);
      if (result.kind === 'refused') {
        const { code, sentence } = result;
        return {
          refusal: refusal({ code, path: ['code'], message: sentence, remedy: 'See faultVocabulary.' }),
        };
      }
      const sequence = changes.length + 1;
      await notebook.appendChange(tx, { organisationId, sequence, id, body, madeBy: personId, fingerprint });
      return { codes: result.codes, replayed: false };
    });
  }
}

function draftOf({ event, variants, ...draft }: FaultDraftInput): FaultDraft | null {
  if (!isTechniqueEvent(event)) return null;
  return {
    ...draft,
    event: event satisfies TechniqueEvent,
    ...(isGiven(variants) && { variants }),
    mayGoWith: '',
    plane: 'sagittal',
    cue: 'own',
    caution: null,
  };
}

export function notTaught(path: readonly string[]): Refusal {
  return refusal({
    code: 'WRONG_EVENT',
    path,
    message: 'There is no vocabulary for this event.',
    remedy: 'Discus, shot, hammer, javelin, long, triple and high jump have one.',
  });
}

function missing(field: 'name' | 'into'): Refusal {
  return refusal({
    code: 'FIELD_MISSING',
    path: [field],
    message: `This change needs ${field}.`,
    remedy: field === 'name' ? 'Send the new name.' : 'Send the code that it is read as from now on.',
  });
}
