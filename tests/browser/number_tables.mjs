// What the key tables of the page show, as places in the JSON. A table is known by its id. `where` says
// how many there have to be; `rows` what each row is of; `columns` which heading shows what of it. A
// `must` column may not be missing. Values are as checks/numbers.mjs takes them.

import { bill_rows, parts_of } from './number_rows.mjs';

// A heading says whether a figure is of a year or of the whole study.
const per = (heading, json, figure) => (/a year$/.test(heading) ? (figure * 12) / json.study.months : figure);
const whole = / a year$| in \d+ months?$/;

const candidate_of = (json, id) => json.candidates.find((c) => c.id === id);
const each_candidate = (json) => json.candidates;
const one = () => 1;
const one_each = (json) => json.candidates.length;
const one_with_horizon = (json) => (json.candidates[0].lifetime ? 1 : 0);
const one_if_drawn = (json) => (json.uncertainty ? 1 : 0);

/** [lower end, upper end] of what was drawn; undefined where nothing was. */
function range_of(json, { id }, figure) {
  const range = json.uncertainty?.candidates.find((c) => c.id === id)[figure];
  return range && [range.p2_5, range.p97_5];
}
const low = (json, c, figure) => range_of(json, c, figure)?.[0];
const high = (json, c, figure) => range_of(json, c, figure)?.[1];
const with_range = (json, c, figure, value) => [value, ...(range_of(json, c, figure) ?? [])];

export const tables = [
  {
    id: /^table-cost$/,
    where: one,
    rows: each_candidate,
    columns: [
      { head: whole, must: true, value: (c, json, heading) => per(heading, json, c.cost) },
      { head: /^from$/, value: (c, json) => low(json, c, 'cost') },
      { head: /^to$/, value: (c, json) => high(json, c, 'cost') },
    ],
  },
  {
    id: /^table-present-cost$/,
    where: one_with_horizon,
    rows: each_candidate,
    columns: [
      { head: /^purchase/, must: true, value: (c) => c.lifetime.purchase },
      { head: /^electricity/, must: true, value: (c) => c.lifetime.energy_cost },
      { head: /^later costs/, must: true, value: (c) => c.lifetime.later_cost },
      { head: /^resale/, must: true, value: (c) => c.lifetime.resale },
      { head: /present value/, must: true, value: (c) => c.lifetime.present_cost },
      { head: /^from$/, value: (c, json) => low(json, c, 'present_cost') },
      { head: /^to$/, value: (c, json) => high(json, c, 'present_cost') },
    ],
  },
  {
    id: /^candidates$/,
    where: one,
    rows: each_candidate,
    columns: [
      {
        head: /^kWh/,
        must: true,
        value: (c, json, heading) =>
          with_range(json, c, 'energy_kwh', c.energy_kwh).map((kwh) => per(heading, json, kwh)),
      },
      { head: /^W on average/, must: true, value: (c) => c.mean_w },
      {
        head: /present value/,
        value: (c, json) => with_range(json, c, 'present_cost', c.lifetime?.present_cost),
      },
      { head: /^purchase/, value: (c) => c.lifetime?.purchase },
      { head: /CO2/, value: (c, json, heading) => per(heading, json, c.co2_kg) },
      {
        head: whole,
        must: true,
        value: (c, json, heading) =>
          with_range(json, c, 'cost', c.cost).map((cost) => per(heading, json, cost)),
      },
    ],
  },
  {
    id: /^table-where-(.+)$/,
    where: one_each,
    rows: (json, [, id], labels) => parts_of(candidate_of(json, id), labels),
    columns: [
      { head: /^kWh/, must: true, value: (part) => part.energy_kwh },
      { head: /^cost/, must: true, value: (part) => part.cost },
    ],
  },
  {
    id: /^devices$/,
    where: one,
    rows: (json) => json.candidates.flatMap((c) => c.devices),
    columns: [
      { head: /^kWh/, must: true, value: (device) => device.energy_kwh },
      { head: /^mean W/, must: true, value: (device) => device.mean_w },
      { head: /^highest W/, must: true, value: (device) => device.highest_w },
    ],
  },
  {
    id: /^table-months-(.+)$/,
    where: one_each,
    rows: (json, [, id]) => candidate_of(json, id).months,
    columns: [
      { head: /^kWh$/, value: (month) => month.energy_kwh },
      { head: /^cost/, must: true, value: (month) => month.cost },
    ],
  },
  {
    id: /^table-drivers$/,
    where: () => 0, // None where nothing is in doubt.
    rows: (json, match, labels) => json.uncertainty.drivers.slice(0, labels.length),
    columns: [{ head: /^share/, must: true, value: (driver) => 100 * driver.share }],
  },
  {
    id: /^cheapest$/,
    where: (json) => (json.candidates.length > 1 ? one_if_drawn(json) : 0),
    rows: (json) => json.uncertainty.candidates,
    columns: [{ head: /least/, must: true, value: (c) => 100 * c.cheapest }],
  },
  {
    id: /^bill-(.+)$/,
    where: one,
    rows: (json, [, id], labels) => bill_rows(json.bills.without[0], json.bills.with[id][0], labels),
    columns: [
      { head: /^without kWh/, must: true, value: ({ without }) => without.kwh },
      { head: /^without (?!kWh)/, must: true, value: ({ without }) => without.amount },
      { head: /^with kWh/, must: true, value: ({ with_it }) => with_it.kwh },
      { head: /^with (?!kWh)/, must: true, value: ({ with_it }) => with_it.amount },
    ],
  },
];
