// The page as a real parser of HTML 5 reads it, and each picture as one of XML does.

import { spawnSync } from 'node:child_process';
import { require_package } from '../packages.mjs';

export const name = 'markup: valid HTML 5, and each picture well-formed XML';

const rules = {
  extends: ['html-validate:recommended', 'html-validate:document'],
  rules: {
    // Layout of the source, which nobody reads and which would only make the page longer.
    'no-trailing-whitespace': 'off',
    'long-title': 'off', // the study's own title, of whatever length
  },
};

async function html_problems(html) {
  const { HtmlValidate, StaticConfigLoader } = require_package('html-validate');
  const report = await new HtmlValidate(new StaticConfigLoader([], rules)).validateString(html);
  return report.results.flatMap(({ messages }) => messages)
    .map((m) => `${m.line}:${m.column}: ${m.ruleId}: ${m.message}`);
}

/** What xmllint says against a picture; nothing where it is well-formed. */
export function xml_problems(svg, named) {
  const run = spawnSync('xmllint', ['--noout', '--nonet', '-'], { input: svg, encoding: 'utf8' });
  if (run.error) return [`xmllint does not run: ${run.error.message}`];
  return run.status === 0 ? [] : [`${named}: ${run.stderr.split('\n')[0]}`];
}

export async function check({ html, picture_files = [] }) {
  const problems = await html_problems(html);
  const in_page = html.match(/<svg[\s>][\s\S]*?<\/svg>/g) ?? [];
  in_page.forEach((svg, i) => problems.push(...xml_problems(svg, `picture ${i + 1} of the page`)));
  for (const { file, svg } of picture_files) problems.push(...xml_problems(svg, file));
  return problems;
}
