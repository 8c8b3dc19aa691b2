// Printed on A4: as many pages as are expected of the study.

export const name = 'print: pages of A4 as expected';

/** The pages of a PDF as Chromium writes it: its page objects are not compressed. */
export const count_pages = (pdf) => (pdf.toString('latin1').match(/\/Type\s*\/Page\b(?!s)/g) ?? []).length;

export async function check({ page, expected }) {
  await page.emulateMedia({ media: 'print', colorScheme: 'light' });
  const pdf = await page.pdf({ format: 'A4', printBackground: true, preferCSSPageSize: true });
  await page.emulateMedia({ media: 'screen' });
  const pages = count_pages(pdf);
  const [least, most] = expected.pages;
  return pages >= least && pages <= most ? [] : [`${pages} pages, not ${least} to ${most}`];
}
