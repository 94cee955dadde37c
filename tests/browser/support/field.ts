import { execFileSync } from 'node:child_process';
import { join } from 'node:path';
import { readWebFiles } from '../../../apps/api/src/platform/web/web-files.js';
import { startApi, type TestApi } from '../../support/api.js';
import { tcpGate, type TcpGate } from '../../support/tcp-gate.js';

const ROOT = join(import.meta.dirname, '..', '..', '..');

/** A server with the desk, and the network between it and the tablets. */
export interface Field {
  readonly api: TestApi;
  /** Can be shut, as a network that fails. */
  readonly network: TcpGate;
  /** Where the desk is on the far side of the network, signed in with a token. */
  deskFor(token: string): string;
  /** Where the office is, signed in with a token. */
  officeFor(token: string): string;
  /** The same of another page, such as `/notebook`. */
  pageFor(page: string, token: string): string;
  close(): Promise<void>;
}

/** Builds the front end as `npm start` does. */
export async function builtWeb() {
  execFileSync(process.execPath, [join(ROOT, 'apps/web/build/ensure-built.mjs')], { stdio: 'inherit' });
  return readWebFiles(join(ROOT, 'dist', 'web'));
}

export async function openField(): Promise<Field> {
  const api = await startApi({ web: await builtWeb() });
  const network = await tcpGate('127.0.0.1', Number(new URL(api.url).port));
  const pageFor = (page: string, token: string): string =>
    `http://127.0.0.1:${network.port}${page}#token=${token}`;
  return {
    api,
    network,
    officeFor: (token) => pageFor('/office', token),
    deskFor: (token) => pageFor('/desk', token),
    pageFor,
    close: async () => {
      await network.shut();
      await api.close();
    },
  };
}
