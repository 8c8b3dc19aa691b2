// What a screen reader goes by: language, title, headings, and each picture's words and table.

export const name = 'structure: language, title, headings in order, pictures with words and a table';

export const check = ({ page }) => page.evaluate(find_bad_structure);

// Runs in the page.
function find_bad_structure() {
  const problems = [];
  if (document.documentElement.lang !== 'en') problems.push('the language is not said');
  if (!document.title.trim()) problems.push('no title');
  if (document.compatMode !== 'CSS1Compat') problems.push('no doctype');

  const headings = [...document.querySelectorAll('h1,h2,h3,h4,h5,h6')];
  const levels = headings.map((h) => Number(h.localName[1]));
  if (levels.filter((level) => level === 1).length !== 1 || levels[0] !== 1) {
    problems.push('not one h1, in front of all headings');
  }
  headings.forEach((h, i) => {
    if (i > 0 && levels[i] > levels[i - 1] + 1) problems.push(`a level is left out before "${h.textContent}"`);
    if (!h.textContent.trim()) problems.push('an empty heading');
  });

  const ids = [...document.querySelectorAll('[id]')].map((e) => e.id);
  for (const id of new Set(ids.filter((id, i) => ids.indexOf(id) !== i))) problems.push(`two of id "${id}"`);
  for (const link of document.querySelectorAll('a[href^="#"]')) {
    const id = decodeURIComponent(link.getAttribute('href').slice(1));
    if (!document.getElementById(id)) problems.push(`a link to "#${id}" leads nowhere`);
  }

  const words_of = (svg, attribute) => (svg.getAttribute(attribute) ?? '').split(/\s+/)
    .map((id) => document.getElementById(id)?.textContent ?? '').join(' ').trim();
  const pictures = [...document.querySelectorAll('svg')];
  if (!pictures.length) problems.push('no picture');
  for (const svg of pictures) {
    const title = words_of(svg, 'aria-labelledby');
    if (svg.getAttribute('role') !== 'img') problems.push(`picture "${title}" has no role of img`);
    if (!title) problems.push('a picture without a name');
    if (!words_of(svg, 'aria-describedby')) problems.push(`picture "${title}" has no description`);
    const rows = svg.closest('figure')?.querySelectorAll('table tbody tr').length ?? 0;
    if (!rows) problems.push(`picture "${title}" has no table of its numbers in its figure`);
  }
  return problems;
}
