// Pictures of a page, for people who look: each width, light and dark, whole, and as printed.
//   node tests/browser/look.mjs PAGE.html FOLDER

import { spawnSync } from 'node:child_process';
import { mkdirSync } from 'node:fs';
import path from 'node:path';
import { launch, schemes, url_of, widths } from './browser.mjs';
import { what_is_missing } from './packages.mjs';

const [file, folder] = process.argv.slice(2);
const missing = what_is_missing();
if (!folder || missing) {
  console.error(missing ?? 'usage: node tests/browser/look.mjs PAGE.html FOLDER');
  process.exit(2);
}
mkdirSync(folder, { recursive: true });
const stem = path.join(folder, path.basename(file, path.extname(file)));

async function shoot(page, width, scheme) {
  await page.setViewportSize({ width, height: 800 });
  await page.emulateMedia({ colorScheme: scheme });
  await page.screenshot({ path: `${stem}-${width}-${scheme}.png`, fullPage: true });
}

async function print(page) {
  await page.emulateMedia({ media: 'print', colorScheme: 'light' });
  const pdf = `${stem}.pdf`;
  await page.pdf({ path: pdf, format: 'A4', printBackground: true });
  const drawn = spawnSync('pdftoppm', ['-r', '60', '-png', pdf, `${stem}-print`]);
  if (drawn.error) console.error('pdftoppm is missing (Debian: poppler-utils): the PDF alone');
}

const browser = await launch();
const page = await browser.newPage();
await page.goto(url_of(file));
for (const width of widths) {
  for (const scheme of schemes) await shoot(page, width, scheme);
}
await print(page);
await browser.close();
console.log(`${stem}-*.png, ${stem}.pdf`);
