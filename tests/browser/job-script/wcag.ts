import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** What of the screen fails WCAG 2.2 A and AA, as axe-core finds it, in the theme that is shown. */
export const wcagFailures = async (page: Page): Promise<readonly string[]> => {
  await page.evaluate(axe);
  const found = await page.evaluate(async () => {
    const { axe: checker } = window as unknown as {
      axe: { run: (root: Document, options: object) => Promise<AxeResults> };
    };
    const { violations, passes } = await checker.run(document, {
      runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22a', 'wcag22aa'],
    });
    return {
      passed: passes.length,
      failed: violations.flatMap(({ id, nodes }) =>
        nodes.map((node) => `${id}: ${node.html} (${node.failureSummary ?? ''})`),
      ),
    };
  });
  expect(found.passed).toBeGreaterThan(5);
  return found.failed;
};
