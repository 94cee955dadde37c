import { PageError, type Page } from '#persistence';
import { type Type } from '@nestjs/common';
import { ArgsType, Field, Int, ObjectType } from '@nestjs/graphql';
import { IsOptional, Max, MaxLength, Min } from 'class-validator';
import { badUserInput } from '../errors/api-error.js';
import { LIMITS } from '../graphql/limits.js';

@ArgsType()
export class PageArgs {
  @Field(() => Int, { description: 'How many, 1 to 100.' })
  @Min(1)
  @Max(LIMITS.page)
  first: number;

  @Field(() => String, { nullable: true, description: 'The cursor of the last edge that was read.' })
  @IsOptional()
  @MaxLength(1000)
  after?: string | null;
}

@ObjectType()
export class PageInfo {
  @Field()
  hasNextPage: boolean;

  @Field({ description: 'Whether the page was asked for with `after`.' })
  hasPreviousPage: boolean;

  @Field(() => String, { nullable: true })
  startCursor: string | null;

  @Field(() => String, { nullable: true })
  endCursor: string | null;
}

export interface Connection<T> {
  readonly edges: readonly { readonly node: T; readonly cursor: string }[];
  readonly pageInfo: PageInfo;
}

/** The pair of types `XEdge` and `XConnection` for lists that grow, after the Relay cursor connections specification. */
export function connectionType<T>(node: Type<T>, name: string): Type<Connection<T>> {
  @ObjectType(`${name}Edge`)
  class Edge {
    @Field(() => node)
    node: T;

    @Field()
    cursor: string;
  }

  @ObjectType(`${name}Connection`)
  class EdgesAndInfo {
    @Field(() => [Edge])
    edges: Edge[];

    @Field(() => PageInfo)
    pageInfo: PageInfo;
  }
  return EdgesAndInfo;
}

/** Reads a page of rows and gives it as a connection. A cursor of another list is the client's fault. */
export async function connectionOf<Row, T>(
  args: PageArgs,
  read: () => Promise<Page<Row>>,
  nodeOf: (row: Row) => T,
): Promise<Connection<T>> {
  const { edges, hasNextPage } = await read().catch(asInputError);
  return {
    edges: edges.map(({ row, cursor }) => ({ node: nodeOf(row), cursor })),
    pageInfo: {
      hasNextPage,
      hasPreviousPage: typeof args.after === 'string',
      startCursor: edges.at(0)?.cursor ?? null,
      endCursor: edges.at(-1)?.cursor ?? null,
    },
  };
}

function asInputError(error: unknown): never {
  if (!(error instanceof PageError)) throw error;
  const { field, message } = error;
  throw badUserInput(message, [
    { path: [field], rule: 'page', message, remedy: 'Take it from pageInfo.endCursor of the page before.' },
  ]);
}
