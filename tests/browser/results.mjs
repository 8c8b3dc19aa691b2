// Results, a line for each check by name; the problems of one that failed below it.

import { what_is_missing } from './packages.mjs';

const most_told = 12;
/** CTest's SKIP_RETURN_CODE. */
const skipped = 77;

let passed = 0;
let failed = 0;

export function report(name, problems) {
  if (problems.length === 0) {
    passed += 1;
    console.log(`ok      ${name}`);
    return;
  }
  failed += 1;
  console.log(`FAILED  ${name}`);
  for (const problem of problems.slice(0, most_told)) {
    console.log(`          ${problem.replace(/\s+/g, ' ').slice(0, 600)}`);
  }
  if (problems.length > most_told) console.log(`          and ${problems.length - most_told} more`);
}

/** The last line, and how the program ends. */
export function finish() {
  console.log(`${passed} passed, ${failed} failed`);
  process.exitCode = failed === 0 && passed > 0 ? 0 : 1;
}

/** Ends here where something is missing: as skipped, or as failed where it has to be there. */
export function skip_without_browser() {
  const missing = what_is_missing();
  if (!missing) return;
  const required = process.env.WATTWEEK_BROWSER === 'required';
  console.log(`${required ? 'FAILED' : 'SKIPPED'}: ${missing}`);
  process.exit(required ? 1 : skipped);
}
