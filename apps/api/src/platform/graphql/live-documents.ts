import {
  GraphQLError,
  getOperationAST,
  OperationTypeNode,
  parse,
  specifiedRules,
  validate,
  type DocumentNode,
  type ExecutionArgs,
  type GraphQLSchema,
} from 'graphql';
import { LRUCache } from 'lru-cache';
import { badUserInput } from '../errors/api-error.js';
import { publicError } from '../errors/classify.js';
import { refuseHostileVariables } from './hostile-text.js';
import { RULES } from './limits.plugin.js';
import { LIMITS } from './limits.js';
import { refuseVariables } from './variables.plugin.js';

const REMEMBERED = 200;

/** What a client sends to subscribe. */
export interface Asked {
  readonly query: string;
  readonly operationName?: string | null;
  readonly variables?: Record<string, unknown> | null;
}

/** Documents that come by WebSocket, under the limits of those that come by HTTP. Each is read and checked once. */
export class LiveDocuments {
  private readonly known = new LRUCache<string, DocumentNode | readonly GraphQLError[]>({ max: REMEMBERED });

  constructor(private readonly schema: GraphQLSchema) {}

  /** The operation, ready to be subscribed to; or why it cannot be. */
  argumentsOf(asked: Asked, contextValue: unknown): ExecutionArgs | readonly GraphQLError[] {
    try {
      const document = this.read(asked.query);
      if (!('kind' in document)) return document;
      const { operationName } = asked;
      const operation = getOperationAST(document, operationName);
      if (operation?.operation !== OperationTypeNode.SUBSCRIPTION)
        return [badUserInput('Only subscriptions come by WebSocket; send queries and mutations over HTTP.')];
      if (asked.variables) refuseHostileVariables(asked.variables);
      const { schema } = this;
      const args: ExecutionArgs = { schema, document, operationName, contextValue };
      args.variableValues = { ...asked.variables };
      refuseVariables(args);
      return args;
    } catch (error) {
      return [publicError(error)];
    }
  }

  private read(query: string): DocumentNode | readonly GraphQLError[] {
    const known = this.known.get(query);
    if (known) return known;
    const read = this.check(query);
    this.known.set(query, read);
    return read;
  }

  private check(query: string): DocumentNode | readonly GraphQLError[] {
    try {
      const document = parse(query, { maxTokens: LIMITS.tokens });
      const errors = validate(this.schema, document, [...specifiedRules, ...RULES]);
      return errors.length === 0 ? document : errors.map((error) => publicError(error));
    } catch (error) {
      return [publicError(error)];
    }
  }
}
