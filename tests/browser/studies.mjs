// The studies whose pages are looked at, besides Ostrawick: small, invented, each hostile in one
// way. `pages` is how many sheets of A4 its report takes, at least and at most.

const head = ({ title = 'Village hall', months = 12, horizon = true, household = '' }) => `
title = ${JSON.stringify(title)}
time_zone = "Etc/UTC"
start = 2027-01-01
months = ${months}
baseline = "c0"
${household}
${horizon ? '[finance]\nyears = 5\ndiscount_rate = 0.03\n' : ''}`;

const flat = (currency = 'EUR', price = 0.3) => `
[tariff]
name = "flat"
currency = "${currency}"
standing_per_month = ${currency === 'JPY' ? 400 : 8.5}
tax = 0.1
[[tariff.band]]
name = "all hours"
price = ${price}
`;

const workload = (i, name) => `
[[workload]]
id = "w${i}"
name = ${JSON.stringify(name)}
[[workload.use]]
hours = "${String(i % 20).padStart(2, '0')}:00-${String((i % 20) + 2).padStart(2, '0')}:00"
share = ${(0.1 + (i % 8) / 10).toFixed(1)}
`;

const candidate = (i, name, workloads, purchase = 60 * i) => `
[[candidate]]
id = "c${i}"
name = ${JSON.stringify(name)}
purchase = ${purchase}
[[candidate.device]]
name = ${JSON.stringify(`device of ${name}`)}
[candidate.device.watts]
off = 0.5
idle = [${60 - 3 * i}, ${68 - 3 * i}]
[candidate.device.increments]
${workloads.map((_, w) => `w${w} = ${1 + ((w + i) % 5)}`).join('\n')}
`;

const numbered = (count, word) => Array.from({ length: count }, (_, i) => `${word} ${i + 1}`);

/** The text of a study of these candidates and workloads, by name. */
const study = (candidates, workloads, { tariff = flat(), times = 1, ...of } = {}) =>
  head(of) + tariff + workloads.map((name, i) => workload(i, name)).join('') +
  candidates.map((name, i) => candidate(i, name, workloads, 60 * i * times)).join('');

// One word as long as a name may be, and one of many words.
const long_word = 'Neighbourhoodphotographandfilmarchivecabinetwithseparateuninterruptiblesupplybox';
const long_words = 'The machine that stands below the stairs of the old school, beside the gas meter';
const long = [long_word, long_words];
// "Home server" and "small server"; below, "backup" and "films".
const servers = ['שרת ביתי', 'خادم صغير'];
const tags = ['<script>alert(1)</script>', ']]> &amp; <!-- -->', '"quoted" \'twice\' & <b>bold'];

const sunny_noon = `
[tariff]
name = "sunny noon"
currency = "EUR"
tax = 0.19
minimum_per_month = 20
[[tariff.band]]
name = "noon"
price = -0.1
hours = "08:00-18:00"
[[tariff.band]]
name = "other hours"
price = 0.3
`;

const household = `[household]\nkwh_per_year = 1200\nincludes = "c0"\n`;
// So little in summer that the minimum bill holds, in winter it does not.
const seasonal = `
[household]
kwh_per_month = [260, 230, 190, 140, 100, 80, 80, 90, 120, 170, 220, 250]
includes = "c0"
`;
const two = ['Old tower', 'Small box'];
const three_uses = ['Backup', 'Films', 'Photographs'];

/**
 * By name: the text of the study, how many sheets it takes, and whether its ranges can be drawn:
 * not where purchases differ and no horizon is named.
 */
export const studies = {
  'one-candidate': { text: study(['Old tower'], three_uses), pages: [4, 6] },
  'fifteen-candidates': {
    text: study(numbered(15, 'Set-up'), numbered(40, 'Task')),
    pages: [16, 26],
  },
  'long-names': {
    text: study(long, long.map((name) => name.slice(1)), { title: long_words, household }),
    pages: [5, 8],
  },
  'right-to-left': {
    text: study(servers, ['גיבוי', 'أفلام'], { title: 'שרת או خادم 24/7?' }),
    pages: [5, 7],
  },
  'tags-in-names': {
    text: study(tags, [...tags].reverse(), { title: tags.join(' ') }),
    pages: [6, 10],
  },
  'no-horizon': { text: study(two, three_uses, { horizon: false }), pages: [3, 6], drawn: false },
  'three-months': {
    text: study(two, three_uses, { months: 3, horizon: false }),
    pages: [3, 6], drawn: false,
  },
  'thirty-months': {
    text: study(two, three_uses, { months: 30, horizon: false }),
    pages: [3, 6], drawn: false,
  },
  'negative-prices': {
    text: study(two, three_uses, { tariff: sunny_noon, household: seasonal }),
    pages: [4, 7],
  },
  yen: {
    text: study(two, three_uses, { tariff: flat('JPY', 31), times: 150, household }),
    pages: [4, 7],
  },
};
