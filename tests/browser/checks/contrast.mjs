// The contrast of text in pictures, which axe leaves open: each text against what is painted below
// it, by the arithmetic of WCAG 2.2 (relative luminance, contrast ratio; success criterion 1.4.3).

import { schemes } from '../browser.mjs';

export const name = 'contrast: text in pictures has 4.5 : 1 in light and dark';

const least = 4.5;

export async function check({ page }) {
  const problems = [];
  for (const scheme of schemes) {
    await page.emulateMedia({ colorScheme: scheme });
    const texts = await page.evaluate(measure_contrasts);
    for (const { text, picture, ratio } of texts) {
      if (ratio < least) problems.push(`${scheme}: ${picture}: "${text}" has ${ratio.toFixed(2)} : 1`);
    }
  }
  return problems;
}

// Runs in the page.
function measure_contrasts() {
  const parsed = (colour) => {
    const [r, g, b, a = 1] = (colour.match(/[\d.]+/g) ?? []).map(Number);
    return colour === 'none' || r === undefined ? [0, 0, 0, 0] : [r, g, b, a];
  };
  const over = ([r, g, b, a], below) =>
    [r, g, b].map((c, i) => c * a + below[i] * (1 - a)).concat(1);
  const luminance = (colour) => {
    const [r, g, b] = colour.slice(0, 3).map((c) => {
      const s = c / 255;
      return s <= 0.04045 ? s / 12.92 : ((s + 0.055) / 1.055) ** 2.4;
    });
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  const contrast = (a, b) => {
    const [light, dark] = [luminance(a), luminance(b)].sort((x, y) => y - x);
    return (light + 0.05) / (dark + 0.05);
  };

  const behind_picture = (svg) => {
    const layers = [];
    for (let e = svg; e; e = e.parentElement) layers.push(parsed(getComputedStyle(e).backgroundColor));
    const dark = matchMedia('(prefers-color-scheme: dark)').matches;
    const canvas = getComputedStyle(document.documentElement).colorScheme.includes('dark') && dark;
    const deepest = canvas ? [18, 18, 18, 1] : [255, 255, 255, 1];
    return layers.reduceRight((below, layer) => over(layer, below), deepest);
  };

  // A thinner stroke, as a line of the grid has it, is not a ground that text stands on.
  const thick = 3;
  const painted = (shape) => {
    const style = getComputedStyle(shape);
    const faded = (colour, opacity) => {
      const c = parsed(colour);
      return [c[0], c[1], c[2], c[3] * Number(opacity) * Number(style.opacity)];
    };
    const half = (parseFloat(style.strokeWidth) || 0) / 2;
    return {
      shape,
      box: shape.getBoundingClientRect(),
      fill: faded(style.fill, style.fillOpacity),
      stroke: half * 2 >= thick ? faded(style.stroke, style.strokeOpacity) : [0, 0, 0, 0],
      half,
      inverse: shape.getScreenCTM().inverse(),
    };
  };
  const colours_at = ({ shape, box, fill, stroke, half, inverse }, x, y) => {
    const beside = x < box.left - half || x > box.right + half;
    if (beside || y < box.top - half || y > box.bottom + half) return [];
    const point = new DOMPoint(x, y).matrixTransform(inverse);
    const colours = [];
    if (fill[3] > 0 && shape.isPointInFill(point)) colours.push(fill);
    if (stroke[3] > 0 && shape.isPointInStroke(point)) colours.push(stroke);
    return colours;
  };

  const points_of = (box) => {
    const points = [];
    for (const fx of [0.02, 0.25, 0.5, 0.75, 0.98]) {
      for (const fy of [0.25, 0.5, 0.75]) points.push([box.left + fx * box.width, box.top + fy * box.height]);
    }
    return points;
  };

  const worst_of = (text, paper, shapes) => {
    const style = getComputedStyle(text);
    const ink = parsed(style.fill);
    const edged = style.paintOrder.startsWith('stroke') && parseFloat(style.strokeWidth) >= thick;
    if (edged) return contrast(over(ink, parsed(style.stroke)), parsed(style.stroke));
    const grounds = points_of(text.getBoundingClientRect()).map(([x, y]) =>
      shapes.flatMap((shape) => colours_at(shape, x, y)).reduce((below, c) => over(c, below), paper));
    return Math.min(...grounds.map((ground) => contrast(over(ink, ground), ground)));
  };

  const results = [];
  for (const svg of document.querySelectorAll('svg')) {
    const paper = behind_picture(svg);
    const shapes = [...svg.querySelectorAll('rect,path,circle,ellipse,polygon,polyline,line')].map(painted);
    for (const text of svg.querySelectorAll('text')) {
      if (!text.textContent.trim()) continue;
      const box = text.getBoundingClientRect();
      const near = (b) => b.right + 20 >= box.left && b.left - 20 <= box.right &&
        b.bottom + 20 >= box.top && b.top - 20 <= box.bottom;
      const below = shapes.filter(({ shape, box: b }) => near(b) &&
        shape.compareDocumentPosition(text) & Node.DOCUMENT_POSITION_FOLLOWING);
      const picture = svg.querySelector('title')?.textContent ?? 'a picture';
      results.push({ text: text.textContent.trim(), picture, ratio: worst_of(text, paper, below) });
    }
  }
  return results;
}
