// Every number of the page's key tables is the one of `compare --format json` with the same
// options, rounded to the digits shown. number_tables.mjs says what stands where.

import { tables } from '../number_tables.mjs';

export const name = "numbers: the tables show the JSON's, rounded";

const minus = /\u2212/g;
const shown_number = /-?\d+(?:\.\d+)?/g;

/** Whether a number as shown is a value rounded to the digits shown. */
export function shows(shown, value) {
  const decimals = (shown.split('.')[1] ?? '').length;
  // Half a step, and what a double and its decimal digits may differ by.
  return Math.abs(Number(shown) - value) <= 0.5 * 10 ** -decimals + 1e-9 * Math.abs(value) + 1e-12;
}

/**
 * What a cell says against its value: a number, several (with a range; a cell may show fewer), none
 * ([]), or undefined where the JSON does not have it.
 */
function cell_problems(cell, value) {
  if (value === undefined) return [];
  const values = [value].flat();
  const shown = cell.replace(minus, '-').match(shown_number) ?? [];
  if (values.length === 0) return shown.length ? [`shows "${cell}" where there is nothing`] : [];
  if (shown.length === 0) return [`shows "${cell}", not ${values[0]}`];
  return values.flatMap((each, i) =>
    shown[i] !== undefined && !shows(shown[i], each) ? [`shows "${shown[i]}", not ${each}`] : []);
}

function table_problems(table, columns, rows_of, json, match) {
  const rows = rows_of(json, match, table.rows.map(([label]) => label));
  const problems = rows.length === table.rows.length ? [] : [`${table.rows.length} rows, not ${rows.length}`];
  table.headings.forEach((heading, at) => {
    const column = columns.find(({ head }) => head.test(heading));
    if (at === 0 || !column) return;
    table.rows.slice(0, rows.length).forEach((cells, row) => {
      const found = cell_problems(cells[at] ?? '', column.value(rows[row], json, heading));
      problems.push(...found.map((f) => `"${cells[0]}", "${heading}" ${f}`));
    });
  });
  for (const { head, must } of columns) {
    if (must && !table.headings.some((h) => head.test(h))) problems.push(`no column ${head}`);
  }
  return problems.map((problem) => `#${table.id}: ${problem}`);
}

export async function check({ page, json }) {
  const read = await page.evaluate(read_tables);
  const problems = [];
  for (const { id, columns, rows, where } of tables) {
    const found = read.filter((table) => id.test(table.id));
    const expected = where(json);
    if (found.length < expected) problems.push(`${found.length} tables ${id}, not ${expected}`);
    for (const table of found) {
      problems.push(...table_problems(table, columns, rows, json, table.id.match(id)));
    }
  }
  return problems;
}

// Runs in the page.
function read_tables() {
  const text = (cell) => cell.textContent.replace(/\s+/g, ' ').trim();
  return [...document.querySelectorAll('table[id]')].map((table) => ({
    id: table.id,
    headings: [...(table.tHead?.rows[table.tHead.rows.length - 1]?.cells ?? [])].map(text),
    rows: [...table.tBodies].flatMap((body) => [...body.rows].map((row) => [...row.cells].map(text))),
  }));
}
