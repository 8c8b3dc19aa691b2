// What the key tables of the page show, as places in the JSON. A table is known by its id; `where`
// says how many there are, `rows` what each row is of, `columns` which heading shows what of it. A
// column that is `must` may not be missing. A value of several numbers is one shown with its range.

const per_year = (json, figure) => figure / (json.study.months / 12);
const doubt_of = (json, id) => json.uncertainty?.candidates?.find((c) => c.id === id);
const range_of = (json, id, figure) => {
  const range = doubt_of(json, id)?.[figure];
  return range ? [range.p2_5, range.p97_5] : [];
};
const candidate_of = (json, id) => json.candidates.find((c) => c.id === id);
const each_candidate = (json) => json.candidates;
const only_with = (present) => (json) => (present(json) ? 1 : 0);
const horizon = (json) => json.candidates[0].lifetime !== undefined && json.candidates[0].lifetime !== null;

// A row of the page's bill is known by what stands in front of it, since lines of nothing are left
// out: see `bill_line`.
export const tables = [
  {
    id: /^table-cost$/,
    where: only_with(() => true),
    rows: each_candidate,
    columns: [
      { head: /a year$|^cost/, must: true, value: (c, json) => per_year(json, c.cost) },
      { head: /^from$/, value: (c, json) => range_of(json, c.id, 'cost').slice(0, 1).map((v) => per_year(json, v)) },
      { head: /^to$/, value: (c, json) => range_of(json, c.id, 'cost').slice(1).map((v) => per_year(json, v)) },
    ],
  },
  {
    id: /^table-present-cost$/,
    where: only_with(horizon),
    rows: each_candidate,
    columns: [
      { head: /^purchase/, must: true, value: (c) => c.lifetime.purchase },
      { head: /^electricity/, value: (c) => c.lifetime.energy_cost },
      { head: /^later costs/, value: (c) => c.lifetime.later_cost },
      { head: /^resale/, value: (c) => c.lifetime.resale },
      { head: /present value/, must: true, value: (c) => c.lifetime.present_cost },
      { head: /^from$/, value: (c, json) => range_of(json, c.id, 'present_cost').slice(0, 1) },
      { head: /^to$/, value: (c, json) => range_of(json, c.id, 'present_cost').slice(1) },
    ],
  },
  {
    id: /^candidates$/,
    where: only_with(() => true),
    rows: each_candidate,
    columns: [
      { head: /^kWh/, must: true, value: (c, json) => [c.energy_kwh, ...range_of(json, c.id, 'energy_kwh')].map((v) => per_year(json, v)) },
      { head: /^W on average/, must: true, value: (c) => c.mean_w },
      { head: /present value/, value: (c, json) => [c.lifetime.present_cost, ...range_of(json, c.id, 'present_cost')] },
      { head: /^purchase/, value: (c) => c.lifetime?.purchase ?? undefined },
      { head: /CO2/, value: (c, json) => per_year(json, c.co2_kg) },
      { head: /a year$/, must: true, value: (c, json) => [c.cost, ...range_of(json, c.id, 'cost')].map((v) => per_year(json, v)) },
    ],
  },
  {
    id: /^table-where-(.+)$/,
    where: (json) => json.candidates.length,
    rows: (json, [, id]) => {
      const c = candidate_of(json, id);
      return [c.base, ...c.workloads];
    },
    columns: [
      { head: /^kWh/, must: true, value: (part) => part.energy_kwh },
      { head: /^cost/, must: true, value: (part) => part.cost },
    ],
  },
  {
    id: /^devices$/,
    where: only_with(() => true),
    rows: (json) => json.candidates.flatMap((c) => c.devices),
    columns: [
      { head: /^kWh/, must: true, value: (device) => device.energy_kwh },
      { head: /^mean W/, must: true, value: (device) => device.mean_w },
      { head: /^highest W/, must: true, value: (device) => device.highest_w },
    ],
  },
  {
    id: /^table-months-(.+)$/,
    where: (json) => json.candidates.length,
    rows: (json, [, id]) => candidate_of(json, id).months,
    columns: [
      { head: /^kWh$/, must: true, value: (month) => month.energy_kwh },
      { head: /^cost/, must: true, value: (month) => month.cost },
    ],
  },
  {
    id: /^table-drivers$/,
    where: () => 0, // There is none where nothing is in doubt.
    rows: (json) => json.uncertainty?.drivers ?? [],
    columns: [{ head: /^share/, must: true, value: (driver) => 100 * driver.share }],
  },
  {
    id: /^cheapest$/,
    where: () => 0,
    rows: (json) => json.uncertainty.candidates,
    columns: [{ head: /least/, must: true, value: (c) => 100 * c.cheapest }],
  },
  {
    id: /^bill-(.+)$/,
    where: (json) => (json.bills ? 1 : 0),
    rows: (json, [, id]) => bill_rows(json, id),
    columns: [
      { head: /^without kWh/, must: true, value: ({ without }) => without.kwh },
      { head: /^without (?!kWh)/, must: true, value: ({ without }) => without.amount },
      { head: /^with kWh/, must: true, value: ({ with_it }) => with_it.kwh },
      { head: /^with (?!kWh)/, must: true, value: ({ with_it }) => with_it.amount },
    ],
  },
];

// The lines of the first month's bill, in the order of a paper bill; a line that is nothing on both
// sides is left out.
function bill_rows(json, id) {
  const lines = (bill) => [
    { amount: bill.standing },
    ...bill.bands.map(({ kwh, amount }) => ({ kwh, amount })),
    { amount: bill.blocks },
    { amount: bill.minimum_top_up },
    { amount: bill.tax },
    { kwh: bill.kwh, amount: bill.total },
  ];
  const without = lines(json.bills.without[0]);
  const with_it = lines(json.bills.with[id][0]);
  return without
    .map((line, i) => ({ without: line, with_it: with_it[i] }))
    .filter(({ without: a, with_it: b }) => a.kwh || b.kwh || a.amount || b.amount);
}
