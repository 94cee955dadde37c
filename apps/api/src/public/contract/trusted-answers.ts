import { execute, parse, type DocumentNode, type GraphQLSchema } from 'graphql';
import { LRUCache } from 'lru-cache';
import { badRequest } from '../../platform/errors/api-error.js';
import { LONGEST_KEPT_S, keptFor, sendable, type Sendable } from '../sending.js';
import type { Dependence, PublicContext } from './public-schema.js';
import { TRUSTED_DOCUMENTS } from './trusted-documents.js';

export interface TrustedAnswer extends Sendable {
  readonly keptS: number;
  /** The body as it goes over the wire. */
  readonly bytes: Buffer;
}

interface Kept {
  readonly answer: TrustedAnswer;
  readonly readings: readonly Dependence[];
}

const KEPT_BYTES = 32 * 1024 * 1024;
const TYPE = 'application/graphql-response+json; charset=utf-8';

/** By name, and as the appendix "Persisted Documents" of GraphQL over HTTP has it: by `sha256:` and the hash. */
const DOCUMENTS: ReadonlyMap<string, DocumentNode> = new Map(
  TRUSTED_DOCUMENTS.flatMap(({ name, hash, text }) => {
    const document = parse(text);
    return [
      [name, document],
      [`sha256:${hash}`, document],
    ] as const;
  }),
);

/** Answers to the documents that this server knows: executed once for each state of what they show. */
export class TrustedAnswers {
  private readonly kept = new LRUCache<string, Kept>({
    maxSize: KEPT_BYTES,
    sizeCalculation: ({ answer }, key) => answer.bytes.length + 2 * (answer.body.length + key.length),
  });

  constructor(
    private readonly schema: GraphQLSchema,
    private readonly circumstances: Omit<PublicContext, 'readings'>,
  ) {}

  /** What was answered at this address, if it is known without waiting that it still holds. */
  atHand(address: string): TrustedAnswer | null {
    const kept = this.kept.get(address);
    return kept?.readings.every(({ isCurrent }) => isCurrent?.() === true) ? kept.answer : null;
  }

  /** `variables` as they stand in the address. Throws BAD_USER_INPUT. */
  async answer(address: string, documentId: string, variables: string): Promise<TrustedAnswer> {
    const kept = this.kept.get(address);
    if (kept && (await isCurrent(kept.readings))) return kept.answer;
    const made = await this.make(documentId, variables);
    this.kept.set(address, made);
    return made.answer;
  }

  private async make(documentId: string, variables: string): Promise<Kept> {
    const document = DOCUMENTS.get(documentId);
    if (!document) throw badRequest('This server knows no document by that id.');
    const contextValue: PublicContext = { ...this.circumstances, readings: [] };
    const variableValues = variablesOf(variables);
    const result = await execute({ schema: this.schema, document, variableValues, contextValue });
    if (result.errors) throw result.errors[0]!;
    const { readings } = contextValue;
    const { body, etag } = sendable(TYPE, JSON.stringify(result));
    const keptS = Math.min(...readings.map(keptOf), LONGEST_KEPT_S);
    const bytes = Buffer.from(body);
    return {
      answer: { type: TYPE, body, bytes, etag: `"${versionOf(readings)}-${etag.slice(1, 9)}"`, keptS },
      readings,
    };
  }
}

async function isCurrent(readings: readonly Dependence[]): Promise<boolean> {
  for (const { snapshot, read } of readings) if ((await read()) !== snapshot) return false;
  return true;
}

function variablesOf(text: string): Record<string, unknown> {
  try {
    const value: unknown = text === '' ? {} : JSON.parse(text);
    if (typeof value === 'object' && value !== null && !Array.isArray(value))
      return value as Record<string, unknown>;
  } catch {
    // Said below, like any other value that is no object.
  }
  throw badRequest('"variables" must be a JSON object.');
}

/** What every snapshot has of these. */
interface Versioned {
  readonly version?: number;
  readonly state?: string;
  readonly isProvisional?: boolean;
  readonly competitions?: readonly { readonly state: string }[];
  readonly meets?: readonly { readonly competitions: readonly { readonly state: string }[] }[];
}

function versionOf(readings: readonly Dependence[]): number {
  return readings.reduce((sum, { snapshot }) => sum + ((snapshot as Versioned | null)?.version ?? 0), 0);
}

function keptOf({ snapshot }: Dependence): number {
  if (!snapshot) return keptFor([]);
  const { state, isProvisional, competitions = [], meets = [] } = snapshot as Versioned;
  if (state !== undefined) return keptFor([state]);
  if (isProvisional !== undefined) return keptFor([isProvisional ? 'running' : 'official']);
  return keptFor([...competitions, ...meets.flatMap((meet) => meet.competitions)].map((one) => one.state));
}
