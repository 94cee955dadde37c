import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { existsSync } from 'node:fs';
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as delay } from 'node:timers/promises';
import { chromium, type Browser, type BrowserContextOptions, type Page } from 'playwright-core';

const USUAL_PATHS = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
];

const SWITCHES = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--remote-debugging-port=0',
  '--lang=en-GB',
];

const PATIENCE_MS = 30_000;

/** Where Chromium is: as `CHROMIUM` says, or at one of the usual paths. */
export function chromiumPath(): string {
  const named = process.env.CHROMIUM;
  const found = [...(named ? [named] : []), ...USUAL_PATHS].find(existsSync);
  if (found !== undefined) return found;
  throw new Error(
    'These tests need Chromium and there is none. Install it (Debian: apt-get install chromium) or say where it is: CHROMIUM=/path/to/chromium',
  );
}

/** A browser with a memory of its own that can be killed and opened again, as a tablet whose battery is empty. */
export class Tablet {
  private process: ChildProcess | undefined;
  private browser: Browser | undefined;

  private constructor(private readonly memory: string) {}

  static async open(): Promise<Tablet> {
    const tablet = new Tablet(await mkdtemp(join(tmpdir(), 'tablet-')));
    await tablet.start();
    return tablet;
  }

  async start(): Promise<void> {
    const portFile = join(this.memory, 'DevToolsActivePort');
    await rm(portFile, { force: true });
    this.process = spawn(chromiumPath(), [...SWITCHES, `--user-data-dir=${this.memory}`, 'about:blank'], {
      stdio: 'ignore',
      detached: true,
    });
    const port = await this.portIn(portFile);
    this.browser = await chromium.connectOverCDP(`http://127.0.0.1:${port}`);
  }

  private async portIn(file: string): Promise<string> {
    const deadline = Date.now() + PATIENCE_MS;
    while (Date.now() < deadline) {
      const [port] = (await readFile(file, 'utf8').catch(() => '')).split('\n');
      if (port) return port;
      if (this.process?.exitCode !== null) throw new Error('Chromium ended before it answered.');
      await delay(30);
    }
    throw new Error('Chromium does not answer.');
  }

  /** A page of the size of a phone unless another one is asked for. */
  async page(url: string, size = { width: 390, height: 844 }): Promise<Page> {
    const context = this.browser!.contexts()[0]!;
    const page = await context.newPage();
    page.setDefaultTimeout(15_000);
    await page.setViewportSize(size);
    await page.goto(url);
    return page;
  }

  /** A page with a memory of its own, such as one that runs no scripts. */
  async strange(url: string, options: BrowserContextOptions): Promise<Page> {
    const context = await this.browser!.newContext(options);
    const page = await context.newPage();
    page.setDefaultTimeout(15_000);
    await page.goto(url);
    return page;
  }

  /** Ends every process of it at once: nothing is closed, nothing is written. */
  async kill(): Promise<void> {
    const { process: child, browser } = this;
    if (!child?.pid) return;
    const ended = child.exitCode === null && child.signalCode === null ? once(child, 'exit') : null;
    process.kill(-child.pid, 'SIGKILL');
    await ended;
    await browser?.close().catch(() => undefined);
    this.process = undefined;
  }

  async discard(): Promise<void> {
    await this.kill();
    await rm(this.memory, { recursive: true, force: true, maxRetries: 5 });
  }
}
