// axe-core, all its default rules with those of best practice, in light and in dark.

import { schemes } from '../browser.mjs';
import { require_package } from '../packages.mjs';

const told = (scheme) => (rule) => {
  const where = rule.nodes.slice(0, 3).map((node) => node.html.slice(0, 160)).join(' | ');
  return `${scheme}: ${rule.id}: ${rule.help}: ${where}`;
};

export const name = 'accessibility: axe-core finds nothing, in light and dark';

export async function check({ page }) {
  const problems = [];
  await page.evaluate(require_package('axe-core').source);
  for (const scheme of schemes) {
    await page.emulateMedia({ colorScheme: scheme });
    const found = await page.evaluate(() => globalThis.axe.run({ resultTypes: ['violations'] }));
    problems.push(...found.violations.map(told(scheme)));
  }
  return problems;
}
