import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { HtmlValidate } from 'html-validate';
import type { Page } from 'playwright-core';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** In terms of the accessibility guidelines and the good practice beside them. */
export async function axeFindings(page: Page): Promise<string[]> {
  await page.evaluate(AXE);
  return page.evaluate(async () => {
    const { axe } = globalThis as any;
    const { violations } = await axe.run(document, { resultTypes: ['violations'] });
    return violations.map(
      ({ id, nodes }: any) => `${id}: ${nodes.map((node: any) => node.html).join(' | ')}`,
    );
  });
}

/** What a page has made of the element it lives in; the page itself is looked at as it is served. */
export async function htmlFindings(page: Page, root: string): Promise<string[]> {
  const made = await page.evaluate((id) => document.getElementById(id)!.outerHTML, root);
  const report = await new HtmlValidate({
    extends: ['html-validate:recommended'],
    rules: { 'void-style': 'off', 'attribute-boolean-style': 'off', 'attribute-empty-style': 'off' },
  }).validateString(
    `<!DOCTYPE html><html lang="en"><head><title>Page</title></head><body>${made}</body></html>`,
  );
  return report.results.flatMap(({ messages }) =>
    messages.map(({ ruleId, message, selector }) => `${ruleId}: ${message} ${selector}`),
  );
}

/** Twice the usual size of letters. */
const LARGE_PX = 34;

/** Whether there is something that only scrolling sideways brings into sight, also in letters of twice the size. */
export async function broadFindings(page: Page): Promise<string[]> {
  const [isBroad, isBroadInLarge] = await page.evaluate((px) => {
    const { documentElement: root } = document;
    const asItIs = root.scrollWidth > innerWidth;
    root.style.fontSize = `${px}px`;
    const inLarge = root.scrollWidth > innerWidth;
    root.style.fontSize = '';
    return [asItIs, inLarge];
  }, LARGE_PX);
  return [
    ...(isBroad ? ['too broad'] : []),
    ...(isBroadInLarge ? ['too broad in letters of twice the size'] : []),
  ];
}

/** Everything at once. */
export async function findingsOf(page: Page, root: string): Promise<string[]> {
  return [...(await axeFindings(page)), ...(await htmlFindings(page, root)), ...(await broadFindings(page))];
}
