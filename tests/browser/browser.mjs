// One chromium for all that is looked at, which asks nothing of the network for itself.

import { pathToFileURL } from 'node:url';
import path from 'node:path';
import { chromium_path, require_package } from './packages.mjs';

const flags = [
  '--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run',
  '--disable-background-networking', '--disable-component-update', '--disable-sync',
];

/** A running browser; the caller closes it. */
export function launch() {
  const { chromium } = require_package('playwright-core');
  return chromium.launch({ executablePath: chromium_path, args: flags });
}

export const url_of = (file) => pathToFileURL(path.resolve(file)).href;

/** The widths that are looked at: a telephone, a tablet, a desk. */
export const widths = [360, 768, 1280];
export const schemes = ['light', 'dark'];

/** Opens all details of a page, or closes them. */
export const open_details = (page, open) =>
  page.evaluate((o) => document.querySelectorAll('details').forEach((d) => (d.open = o)), open);

/**
 * A page as the checks want it: opened without a network, with what it asked for and said. Requests
 * are seen before a policy of the page or the missing network stops them.
 */
export async function open_page(browser, file) {
  const context = await browser.newContext({ offline: true });
  const page = await context.newPage();
  const requests = [];
  const console_lines = [];
  const url = url_of(file);
  page.on('request', (request) => {
    if (request.url().split('#')[0] !== url) requests.push(request.url());
  });
  page.on('console', (message) => console_lines.push(`${message.type()}: ${message.text()}`));
  page.on('pageerror', (error) => console_lines.push(`error: ${error.message}`));
  page.on('dialog', (dialog) => {
    console_lines.push(`dialog: ${dialog.message()}`);
    return dialog.dismiss();
  });
  await page.goto(url);
  return { page, context, requests, console_lines };
}
