// Prints what is missing for these tests; nothing where all is there. CMake asks when it configures.

import { what_is_missing } from './packages.mjs';

process.stdout.write(what_is_missing() ?? '');
