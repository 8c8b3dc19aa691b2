// Text in pictures: whole, not on other text, and large enough on a telephone.

import { widths } from '../browser.mjs';

export const name = 'text in pictures: within the picture, apart, and 9 px or higher at 360 px';

export async function check({ page }) {
  const problems = [];
  for (const width of [widths[0], widths[2]]) {
    await page.setViewportSize({ width, height: 800 });
    problems.push(...(await page.evaluate(find_bad_text)).map((p) => `${width} px: ${p}`));
  }
  return problems;
}

// Runs in the page.
function find_bad_text() {
  const smallest_px = 9;
  const tolerance = 1.5; // px: boxes are of the letters' room, somewhat more than their ink
  const problems = [];
  for (const svg of document.querySelectorAll('svg')) {
    const frame = svg.getBoundingClientRect();
    const scale = svg.getScreenCTM().a;
    const picture = svg.querySelector('title')?.textContent.slice(0, 60) ?? 'a picture';
    const texts = [...svg.querySelectorAll('text')].filter((t) => t.textContent.trim()).map((t) => {
      const box = t.getBoundingClientRect();
      // A line of letters takes about 0.7 of its room.
      const slack = 0.15 * box.height;
      return { words: t.textContent.trim().slice(0, 60), px: parseFloat(getComputedStyle(t).fontSize) * scale,
        left: box.left, right: box.right, top: box.top + slack, bottom: box.bottom - slack };
    });
    const say = (what) => problems.push(`${picture}: ${what}`);
    texts.forEach((a, i) => {
      if (a.px < smallest_px) say(`"${a.words}" is ${a.px.toFixed(1)} px high`);
      if (a.left < frame.left - tolerance || a.right > frame.right + tolerance ||
          a.top < frame.top - tolerance || a.bottom > frame.bottom + tolerance) say(`"${a.words}" is cut off`);
      for (const b of texts.slice(i + 1)) {
        const wide = Math.min(a.right, b.right) - Math.max(a.left, b.left);
        const high = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
        if (wide > tolerance && high > tolerance) say(`"${a.words}" lies on "${b.words}"`);
      }
    });
  }
  return problems;
}
