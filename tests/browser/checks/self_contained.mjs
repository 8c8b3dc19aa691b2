// Nothing leaves the page, and nothing in it runs.

export const name = 'self-contained: no request, no script, nothing on the console';

export async function check({ page, requests, console_lines }) {
  const problems = requests.map((url) => `requests ${url}`);
  problems.push(...console_lines.map((line) => `console: ${line}`));
  problems.push(...(await page.evaluate(find_what_runs_or_loads)));
  return problems;
}

// Runs in the page.
function find_what_runs_or_loads() {
  const problems = [];
  const policy = document.querySelector('meta[http-equiv="Content-Security-Policy"]')?.content ?? '';
  if (!/default-src 'none'/.test(policy) || /script-src/.test(policy)) {
    problems.push(`the content security policy is "${policy}", not default-src 'none' without scripts`);
  }
  const forbidden = 'script,iframe,object,embed,link,img,video,audio,form,base,foreignObject';
  for (const e of document.querySelectorAll(forbidden)) problems.push(`has <${e.localName}>`);
  for (const element of document.querySelectorAll('*')) {
    for (const { name, value } of element.attributes) {
      if (/^on/i.test(name)) problems.push(`<${element.localName}> has ${name}`);
      const leads = ['src', 'srcset', 'href', 'xlink:href', 'action', 'data', 'poster'].includes(name);
      if (leads && !value.startsWith('#')) problems.push(`<${element.localName}> leads to ${value}`);
      if (/url\(\s*['"]?(?!#)/i.test(value)) problems.push(`<${element.localName}> ${name} has ${value}`);
    }
  }
  for (const sheet of document.querySelectorAll('style')) {
    if (/@import|url\(\s*['"]?(?!#)/i.test(sheet.textContent)) problems.push('a style sheet loads a file');
  }
  return problems;
}
