/**
 * What one request may ask for. Start values: generous for every document that the desk, the explorer or the tests
 * send, and far below what would keep two cores busy for a noticeable time.
 */
export const LIMITS = {
  /** Bytes of a body without a token. A recorded trial takes about 600. */
  bodyBytes: 64 * 1024,
  /** Bytes of a body with a valid token: a sheet may have 5,000,000, more as an escaped JSON string. */
  bodyBytesWithToken: 8 * 1024 * 1024,
  /** The lexer stops here, before anything looks at the document. */
  tokens: 1000,
  /** Nested selections; a connection takes two. Introspection, bounded by GraphQL itself, is not counted. */
  depth: 10,
  /** Levels of a variable's value. A sheet has seven. */
  variableDepth: 32,
  aliases: 15,
  directives: 10,
  /** Fragments that name each other twice double at every step when a query is compiled. */
  fragmentSpreads: 30,
  rootFields: 10,
  /** Objects that the answer may hold at most, by the sizes that the document asks for. */
  cost: 10_000,
  /** Elements of one page of a connection. */
  page: 100,
  /** Subscriptions that a WebSocket may have without a token, and with one. */
  publicSubscriptions: 3,
  subscriptions: 20,
  /** Assumed length of a list that has no page size. */
  plainList: 25,
} as const;
