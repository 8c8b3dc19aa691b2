// All checks, in the order in which they run: first those that must see the page untouched.

import * as self_contained from './checks/self_contained.mjs';
import * as structure from './checks/structure.mjs';
import * as markup from './checks/markup.mjs';
import * as numbers from './checks/numbers.mjs';
import * as width from './checks/width.mjs';
import * as picture_text from './checks/picture_text.mjs';
import * as contrast from './checks/contrast.mjs';
import * as print from './checks/print.mjs';
import * as accessibility from './checks/accessibility.mjs';

export const checks = [
  self_contained, structure, markup, numbers, width, picture_text, contrast, print, accessibility,
];
