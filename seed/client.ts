/** Sends documents to one API with one token. */
export class Client {
  constructor(
    private readonly baseUrl: string,
    private readonly token: string,
  ) {}

  /**
   * Calls one mutation that takes `input`, and gives the part of the payload that `selection` asks for. Throws when
   * anything was refused: the demonstration is right, or it is not loaded.
   */
  async call<T>(mutation: string, input: object, selection: string): Promise<T> {
    const type = `${mutation.charAt(0).toUpperCase()}${mutation.slice(1)}Input`;
    const query = `mutation ($input: ${type}!) { ${mutation}(input: $input) { ${selection} userErrors { code message path } } }`;
    const payload = await this.send<T & { readonly userErrors: readonly unknown[] }>(query, mutation, {
      input,
    });
    if (payload.userErrors.length > 0) throw new Error(`${mutation}: ${JSON.stringify(payload.userErrors)}`);
    return payload;
  }

  /** What `field` of a document answers. */
  async send<T>(query: string, field: string, variables: object): Promise<T> {
    const answer = await this.find<T>(query, field, variables);
    if (answer === null) throw new Error(`${field}: there is nothing`);
    return answer;
  }

  /** The same of what need not be there; null: it is not. */
  async find<T>(query: string, field: string, variables: object): Promise<T | null> {
    const response = await fetch(`${this.baseUrl}/graphql`, {
      method: 'POST',
      headers: {
        'content-type': 'application/json',
        accept: 'application/graphql-response+json',
        authorization: `Bearer ${this.token}`,
      },
      body: JSON.stringify({ query, variables }),
    });
    const { data, errors } = (await response.json()) as Answer<T>;
    const answer = data?.[field];
    if (errors || answer === undefined) {
      throw new Error(`${field}: ${JSON.stringify(errors ?? response.status)}`);
    }
    return answer;
  }
}

interface Answer<T> {
  readonly data?: Readonly<Record<string, T | null>> | null;
  readonly errors?: readonly unknown[];
}
