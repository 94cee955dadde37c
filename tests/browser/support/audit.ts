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

/** Whether the page is broader than the screen. */
export async function broadFindings(page: Page): Promise<string[]> {
  const isBroad = await page.evaluate(() => document.documentElement.scrollWidth > innerWidth);
  return isBroad ? ['too broad'] : [];
}

/** Everything at once. */
export async function findingsOf(page: Page, root: string): Promise<string[]> {
  return [...(await axeFindings(page)), ...(await htmlFindings(page, root)), ...(await broadFindings(page))];
}
