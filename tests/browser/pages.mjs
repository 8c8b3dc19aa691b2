// Writes the pages that are looked at, their pictures, and the JSON that they are held against.

import { execFileSync } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { studies } from './studies.mjs';

// The same for the page and the JSON: as many draws as show ranges, one seed.
const draws = ['--draws', '200', '--seed', '1'];

// Without a PATH no picture is turned into a PNG, which would take most of the time.
const how = { encoding: 'utf8', maxBuffer: 1 << 28, stdio: ['ignore', 'pipe', 'pipe'], env: { PATH: '' } };
const run = (program, args) => execFileSync(program, args, how);

function pictures_in(folder) {
  return readdirSync(folder).filter((file) => file.endsWith('.svg'))
    .map((file) => ({ file, svg: readFileSync(path.join(folder, file), 'utf8') }));
}

/** A study's page: where it is, what it says, its JSON, its pictures. */
function make_page(program, folder, { name, study, pages, drawn = true }) {
  const same_options = drawn ? draws : [];
  const file = path.join(folder, `${name}.html`);
  const pictures = path.join(folder, `${name}-pictures`);
  mkdirSync(pictures, { recursive: true });
  run(program, ['report', study, '-o', file, '--pictures', pictures, '--force', ...same_options]);
  const json = JSON.parse(run(program, ['compare', study, '--format', 'json', ...same_options]));
  return {
    name,
    file,
    json,
    html: readFileSync(file, 'utf8'),
    picture_files: pictures_in(pictures),
    expected: { pages },
  };
}

/** All makers of pages, by name: each writes its page below `folder`. */
export function all_pages(program, source, folder) {
  mkdirSync(folder, { recursive: true });
  const ostrawick = path.join(source, 'docs', 'examples', 'ostrawick.toml');
  const demo = { name: 'ostrawick', study: ostrawick, pages: [6, 10] };
  const makers = [{ name: demo.name, make: () => make_page(program, folder, demo) }];
  for (const [name, { text, ...of }] of Object.entries(studies)) {
    const study = path.join(folder, `${name}.toml`);
    const make = () => {
      writeFileSync(study, text);
      return make_page(program, folder, { name, study, ...of });
    };
    makers.push({ name, make });
  }
  return makers;
}
