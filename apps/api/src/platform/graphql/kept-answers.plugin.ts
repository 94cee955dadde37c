import { isAsyncIterable, type Plugin } from 'graphql-yoga';
import {
  Kind,
  OperationTypeNode,
  visit,
  type DocumentNode,
  type ExecutionArgs,
  type ExecutionResult,
  type FieldNode,
  type OperationDefinitionNode,
  type ValueNode,
} from 'graphql';
import { LRUCache } from 'lru-cache';
import type { CompetitionMemory } from '../competition/competition-memory.js';
import type { LoadedCompetition } from '../competition/loaded.js';
import { uuidOf } from '../inputs/global-id.js';
import type { RequestContext } from './request-context.js';
import type { HttpContext } from './request-parameters.js';

/**
 * What a competition shows to the public that depends on nothing but its remembered version. Draws are read beside it.
 */
export const KEPT_FIELDS: ReadonlySet<string> = new Set([
  ...[
    '__typename',
    'id',
    'title',
    'event',
    'rules',
    'edition',
    'isIndoor',
    'stage',
    'qualifying',
    'plan',
    'unit',
  ],
  ...[
    'categorySex',
    'categoryAge',
    'categoryScheme',
    'implementGrams',
    'status',
    'version',
    'startsAt',
    'vertical',
  ],
  ...['foulReasons', 'implementSpecifications', 'trialTime'],
  ...['table', 'progress', 'needed', 'orders', 'result', 'safety'],
  ...['resultState', 'protestTimes', 'disqualificationRules'],
]);

/** What lies below a kept field and depends on more than the version of its competition. */
export const NOT_KEPT_BELOW: ReadonlySet<string> = new Set(['bests']);

const KEPT_BYTES = 32 * 1024 * 1024;

interface Kept {
  readonly organisationId: string;
  readonly competition: LoadedCompetition;
  /** The whole answer as JSON. */
  readonly text: string;
}

/** An answer that is written out already. */
type Written = ExecutionResult & { stringify?: (result: unknown) => string };

interface Params {
  readonly query?: string;
  readonly operationName?: string;
  readonly variables?: unknown;
}

type Context = RequestContext & HttpContext & { readonly params: Params };

/**
 * Answers the crowd that reads one competition over and over: what the public is answered is written out once for a
 * version and sent to everybody who asks the same. An answer ends with the version that it shows, so nobody reads an
 * older one than without this.
 */
export function useKeptAnswers(memory: CompetitionMemory): Plugin<Context, HttpContext> {
  const kept = new LRUCache<string, Kept>({
    maxSize: KEPT_BYTES,
    sizeCalculation: ({ text }, key) => 2 * (text.length + key.length),
  });
  return {
    onParams({ params, context, setResult }) {
      if (!context.req.identity.isPublic) return;
      const answer = kept.get(keyOf(params));
      if (answer && memory.atHand(answer.organisationId, answer.competition.row.id) === answer.competition)
        setResult(written(answer.text));
    },
    onExecute({ args }) {
      const { identity, params } = args.contextValue;
      const id = identity.isPublic ? competitionOf(args) : null;
      const { organisationId } = identity;
      const competition = id === null ? undefined : memory.atHand(organisationId, id);
      if (id === null || !competition) return undefined;
      return {
        onExecuteDone({ result, setResult }) {
          // Versions never go back: what is at hand before and after was at hand all the time.
          // That there is nothing to be seen may depend on the time.
          if (isAsyncIterable(result) || result.errors || !result.data?.['competition']) return;
          if (memory.atHand(organisationId, id) !== competition) return;
          const text = textOf(result);
          kept.set(keyOf(params), { organisationId, competition, text });
          setResult(written(text));
        },
      };
    },
  };
}

function keyOf({ query, operationName, variables }: Params): string {
  return JSON.stringify([query, operationName, variables]);
}

function textOf(result: Written): string {
  return (result.stringify ?? JSON.stringify)(result);
}

function written(text: string): Written {
  return { stringify: () => text };
}

const selections = new WeakMap<DocumentNode, ValueNode | null>();

/** The UUID of the competition that the query reads, if it reads nothing but kept fields of one. */
function competitionOf({ document, variableValues }: ExecutionArgs): string | null {
  let id = selections.get(document);
  if (id === undefined) selections.set(document, (id = idArgument(document)));
  if (id?.kind === Kind.STRING) return uuidOf('Competition', id.value);
  return id?.kind === Kind.VARIABLE ? uuidOf('Competition', variableValues?.[id.name.value]) : null;
}

function idArgument({ definitions }: DocumentNode): ValueNode | null {
  const [operation, ...more] = definitions;
  if (
    operation?.kind !== Kind.OPERATION_DEFINITION ||
    operation.operation !== OperationTypeNode.QUERY ||
    more.length > 0
  )
    return null;
  const [field, ...others] = operation.selectionSet.selections;
  if (field?.kind !== Kind.FIELD || field.name.value !== 'competition' || others.length > 0) return null;
  const own = field.selectionSet?.selections ?? [];
  const isKept = own.every((one) => one.kind === Kind.FIELD && KEPT_FIELDS.has(one.name.value));
  return isKept && !readsBelow(operation) ? argumentOf(field) : null;
}

function readsBelow(operation: OperationDefinitionNode): boolean {
  let reads = false;
  visit(operation, {
    Field({ name }) {
      if (NOT_KEPT_BELOW.has(name.value)) reads = true;
    },
  });
  return reads;
}

function argumentOf({ arguments: given = [] }: FieldNode): ValueNode | null {
  return given.find(({ name }) => name.value === 'id')?.value ?? null;
}
