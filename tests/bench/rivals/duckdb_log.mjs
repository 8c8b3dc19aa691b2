// A year's log by DuckDB on one thread: mean watts, kWh with each sample held until the next, mean
// by hour of the week. `node duckdb_log.mjs FOLDER LOG.csv`, FOLDER being where npm has put
// @duckdb/node-api; `--has` in place of the log says its version.
//
// The log is in order, and the query relies on it: lead() over rows as they come needs no sorting.

import { createRequire } from "node:module";
import { join, resolve } from "node:path";

const [folder, log] = process.argv.slice(2);
const require = createRequire(join(resolve(folder), "package.json"));
const { DuckDBInstance } = require("@duckdb/node-api");
const connection = await (await DuckDBInstance.create(":memory:", { threads: "1" })).connect();

async function rows(query) {
  return (await connection.runAndReadAll(query)).getRowsJson();
}

if (log === "--has") {
  console.log(`DuckDB ${(await rows("SELECT version()"))[0][0]}`);
} else {
  const hours = await rows(`
    SET TimeZone = 'UTC';
    WITH held AS (
      SELECT time, watts, epoch_us(lead(time) OVER ()) - epoch_us(time) AS us
      FROM read_csv('${log}', header = false, columns = {time: TIMESTAMPTZ, watts: DOUBLE}))
    SELECT (isodow(time) - 1) * 24 + hour(time) AS hour_of_week, sum(watts * us) / 1e6 AS joules,
           sum(us) / 1e6 AS seconds
    FROM held WHERE us <= 300e6 GROUP BY 1 ORDER BY 1`);
  const joules = hours.reduce((sum, row) => sum + Number(row[1]), 0);
  const seconds = hours.reduce((sum, row) => sum + Number(row[2]), 0);
  const week = hours.map((row) => Number(row[1]) / Number(row[2]));
  console.log(JSON.stringify({ mean_w: joules / seconds, energy_kwh: joules / 3.6e6, week }));
}
