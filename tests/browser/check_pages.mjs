// Every check on the page of every study, in one browser.
//   node tests/browser/check_pages.mjs PROGRAM FOLDER [NAME...]
// PROGRAM is build/wattweek; pages are written into FOLDER; NAME is of a study, all if none.

import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { launch, open_details, open_page } from './browser.mjs';
import { checks } from './checks.mjs';
import { all_pages } from './pages.mjs';
import { finish, report, skip_without_browser } from './results.mjs';

const source = fileURLToPath(new URL('../..', import.meta.url));
const [program, folder, ...names] = process.argv.slice(2);
if (!folder) {
  console.error('usage: node tests/browser/check_pages.mjs PROGRAM FOLDER [NAME...]');
  process.exit(2);
}

/** What a check says of a page; a check that falls over has failed, too. */
async function problems_of(check, made, opened) {
  try {
    return await check({ ...made, ...opened });
  } catch (error) {
    return [String(error.stack ?? error)];
  }
}

async function check_page(browser, made) {
  const opened = await open_page(browser, made.file);
  const seconds = [];
  for (const { name, check } of checks) {
    const begun = Date.now();
    await open_details(opened.page, name.startsWith('accessibility'));
    report(`${made.name}: ${name}`, await problems_of(check, made, opened));
    seconds.push(`${name.split(/[ :]/)[0]} ${((Date.now() - begun) / 1000).toFixed(1)}`);
  }
  await opened.context.close();
  console.log(`        ${made.name}: seconds: ${seconds.join(', ')}`);
}

async function make_and_check(browser, { name, make }) {
  try {
    await check_page(browser, make());
  } catch (error) {
    report(`${name}: a page`, [error.stderr?.toString() || String(error.stack ?? error)]);
  }
}

skip_without_browser();
const browser = await launch();
const waiting = all_pages(path.resolve(program), source, folder)
  .filter(({ name }) => names.length === 0 || names.includes(name));
// Two pages at a time: each has a process of its own.
async function work() {
  while (waiting.length) await make_and_check(browser, waiting.shift());
}
await Promise.all([work(), work()]);
await browser.close();
finish();
