// Rows of tables that do not stand one for one in the JSON: parts of a candidate's energy, lines of a
// bill.

/**
 * What each row of a candidate's parts shows: the base, the workloads, what the contract adds, and
 * all together.
 */
export function parts_of(candidate, labels) {
  const parts = [candidate.base, ...candidate.workloads];
  for (const label of labels.slice(parts.length)) {
    if (label === 'together') parts.push(candidate);
    if (/^minimum bill/.test(label)) parts.push({ energy_kwh: [], cost: candidate.minimum_cost });
    if (/^block/.test(label)) parts.push({ energy_kwh: [], cost: candidate.blocks_cost });
  }
  return parts;
}

const sums = [
  { label: /^standing charge/, amount: (bill) => bill.standing },
  { label: /^block/, amount: (bill) => bill.blocks },
  { label: /^up to the minimum bill/, amount: (bill) => bill.minimum_top_up },
  { label: /^tax/, amount: (bill) => bill.tax },
];

/** A line of a bill by what stands in front of it; nothing where the bill has no such line. */
function line_of(bill, label, labels) {
  if (label === 'total') return { kwh: bill.kwh, amount: bill.total };
  const band = bill.bands.find(({ name }) => name === label);
  if (band) return band;
  const sum = sums.find((each) => each.label.test(label));
  if (!sum) return undefined;
  // The JSON has the sum of several lines of a kind alone; only blocks have kWh.
  const alone = labels.filter((other) => sum.label.test(other)).length === 1;
  return { kwh: /^block/.test(label) ? undefined : [], amount: alone ? sum.amount(bill) : undefined };
}

/** Each row of a bill without and with a candidate. A row of an unknown label is missing here. */
export function bill_rows(without, with_it, labels) {
  const rows = labels
    .map((label) => ({ without: line_of(without, label, labels), with_it: line_of(with_it, label, labels) }))
    .filter((row) => row.without);
  // A sum that is not nothing has its row.
  for (const { label, amount } of sums) {
    const told = labels.some((shown) => label.test(shown));
    if (!told && (amount(without) || amount(with_it))) rows.push({ without: {}, with_it: {} });
  }
  return rows;
}
