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
