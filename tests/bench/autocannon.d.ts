/** The part of autocannon that is used here; the package brings no types. */
declare module 'autocannon' {
  interface Request {
    readonly method: 'GET' | 'POST';
    readonly path: string;
    readonly headers: Readonly<Record<string, string>>;
    readonly body?: string;
    onResponse?(status: number, body: string): void;
  }
  interface Client {
    setRequests(requests: readonly Request[]): void;
  }
  interface Options {
    readonly url: string;
    readonly connections: number;
    /** Seconds; or `amount` requests in all. */
    readonly duration?: number;
    readonly amount?: number;
    /** Errors after which it gives up. */
    readonly bailout?: number;
    readonly setupClient: (client: Client) => void;
  }
  interface Result {
    readonly errors: number;
    readonly timeouts: number;
    readonly non2xx: number;
  }
  export default function autocannon(options: Options): Promise<Result>;
}
