// The one door of the npm packages. They are installed into the build folder, never beside these
// scripts: WATTWEEK_BROWSER_PACKAGES names it where it is not build/browser.

import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import { existsSync } from 'node:fs';
import path from 'node:path';

const here = path.dirname(fileURLToPath(import.meta.url));
const folder =
  process.env.WATTWEEK_BROWSER_PACKAGES ?? path.join(here, '..', '..', 'build', 'browser');
const chromiums = [process.env.WATTWEEK_CHROMIUM, '/usr/bin/chromium', '/usr/bin/chromium-browser'];

/**
 * A package as `require` gives it, from the build folder. To be called within functions, so that a
 * missing package is told of by `what_is_missing` first.
 */
export const require_package = createRequire(path.join(folder, 'package.json'));

/** Chromium's path, or undefined where there is none. */
export const chromium_path = chromiums.find((file) => file && existsSync(file));

/** What is missing for these tests, as a sentence; undefined where all is there. */
export function what_is_missing() {
  if (!chromium_path) return 'chromium is not installed (Debian: chromium)';
  for (const name of ['playwright-core', 'axe-core', 'html-validate']) {
    try {
      require_package.resolve(name);
    } catch {
      return `the npm package ${name} is not installed in ${folder} (./bootstrap test installs it)`;
    }
  }
  return undefined;
}
