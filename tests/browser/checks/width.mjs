// The page is as wide as its window, with all details open and with all closed, and printed.

import { open_details, widths } from '../browser.mjs';

export const name = 'width: nothing wider than the window at 360, 768, 1280 px, nor than the paper';

// What margins of 14 mm leave of A4, at 96 px to the inch.
const paper_px = 687;

export async function check({ page }) {
  const problems = [];
  const look = async (what) => {
    const found = await page.evaluate(find_what_is_wider);
    problems.push(...found.map((problem) => `${what}: ${problem}`));
  };
  for (const width of widths) {
    await page.setViewportSize({ width, height: 800 });
    for (const open of [false, true]) {
      await open_details(page, open);
      await look(`${width} px, details ${open ? 'open' : 'closed'}`);
    }
  }
  await page.setViewportSize({ width: paper_px, height: 1000 });
  await page.emulateMedia({ media: 'print' });
  for (const open of [true, false]) {
    await open_details(page, open);
    await look(`printed with details ${open ? 'open' : 'closed'}`);
  }
  await page.emulateMedia({ media: 'screen' });
  return problems;
}

// Runs in the page: the innermost elements that stick out, if the page can be scrolled sideways.
function find_what_is_wider() {
  const { scrollWidth, clientWidth } = document.scrollingElement;
  if (scrollWidth <= clientWidth) return [];
  const out = (e) => e.getBoundingClientRect().right > clientWidth + 0.5;
  const innermost = (e) => out(e) && ![...e.children].some(out);
  const culprits = [...document.querySelectorAll('body *')].filter(innermost);
  const told = culprits.slice(0, 3).map((e) => `<${e.localName}> ${e.textContent.trim().slice(0, 60)}`);
  return [`${scrollWidth} px in ${clientWidth} px: ${told.join(' | ')}`];
}
