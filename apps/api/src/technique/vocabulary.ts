import type { FaultChangeBody, FaultChangeRow } from '#persistence';
import {
  defineFault,
  hideFault,
  mergeFault,
  newVocabulary,
  renameFault,
  retireFault,
  showFault,
  splitFault,
  type Vocabulary,
  type VocabularyResult,
} from '#technique';

/** One change of a vocabulary: a new one, or why not. */
export function changeOf(vocabulary: Vocabulary, body: FaultChangeBody): VocabularyResult {
  switch (body.kind) {
    case 'define':
      return defineFault(vocabulary, body.drafts[0]);
    case 'rename':
      return renameFault(vocabulary, body.code, body.name);
    case 'retire':
      return retireFault(vocabulary, body.code);
    case 'merge':
      return mergeFault(vocabulary, body.code, body.into);
    case 'split':
      return splitFault(vocabulary, body.code, body.drafts);
    case 'hide':
      return hideFault(vocabulary, body.code);
    case 'show':
      return showFault(vocabulary, body.code);
  }
}

/** What the changes come to in order. One that a newer edition of the built-in words refuses changes nothing. */
export function vocabularyOf(changes: readonly Pick<FaultChangeRow, 'body'>[]): Vocabulary {
  return changes.reduce((vocabulary, { body }) => {
    const result = changeOf(vocabulary, body);
    return result.kind === 'changed' ? result.vocabulary : vocabulary;
  }, newVocabulary());
}
