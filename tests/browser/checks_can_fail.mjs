// No check is blind: each finds in fixtures/bad.html every fault that was put there for it.

import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { launch, open_page } from './browser.mjs';
import { checks } from './checks.mjs';
import { finish, report, skip_without_browser } from './results.mjs';

const here = (name) => fileURLToPath(new URL(name, import.meta.url));

/** What must be said of the bad page, by the first word of a check's name. */
const faults = {
  'self-contained': [
    'requests http://picture.invalid/a.png', 'said by the page', 'security policy is ""',
    'has <script>', 'has onload', 'leads to http',
  ],
  structure: [
    'language', 'no title', 'not one h1', 'leads nowhere', 'no role of img', 'without a name',
    'no description', 'no table of its numbers',
  ],
  markup: ['element-required-attributes', 'picture 1 of the page: -:'],
  numbers: ['shows "877", not 876', 'tables /^devices$/, not 1', 'no column'],
  width: ['360 px, details closed', '1280 px, details open', 'printed with details closed'],
  text: ['360 px: Bad picture: "too small', 'lies on "lies on it"', 'is cut off'],
  contrast: ['light: Bad picture: "grey on grey" has 1.', 'dark: Bad picture: "grey on grey"'],
  print: ['5 pages, not 1 to 2'],
  accessibility: ['light: color-contrast', 'dark: image-alt', 'html-has-lang', 'heading'],
};

skip_without_browser();
const browser = await launch();
for (const { name, check } of checks) {
  const opened = await open_page(browser, here('fixtures/bad.html'));
  const said = await check({
    ...opened,
    html: readFileSync(here('fixtures/bad.html'), 'utf8'),
    json: JSON.parse(readFileSync(here('fixtures/bad.json'), 'utf8')),
    expected: { pages: [1, 2] },
  });
  await opened.context.close();
  const expected = faults[name.split(/[ :]/)[0]] ?? ['(no fault is listed for this check)'];
  const unseen = expected.filter((fault) => !said.some((problem) => problem.includes(fault)));
  const problems = unseen.map((fault) => `not seen: ${fault}`);
  report(`sees faults of ${name}`, problems.length ? [...problems, ...said] : []);
}
await browser.close();
finish();
