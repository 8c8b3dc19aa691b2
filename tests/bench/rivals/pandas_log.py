"""A year's log by pandas: mean watts, kWh with each sample held until the next, mean by hour of the
week. `pandas_log.py LOG.csv`, or `--has` to say whether there is pandas."""

import json
import sys

import pandas


def reckon(path):
    log = pandas.read_csv(path, header=None, names=["time", "watts"], parse_dates=["time"])
    seconds = -log.time.diff(-1).dt.total_seconds()
    known = seconds <= 300
    seconds, watts, time = seconds[known], log.watts[known], log.time[known]
    joules = watts * seconds
    hour = time.dt.dayofweek * 24 + time.dt.hour
    week = joules.groupby(hour).sum() / seconds.groupby(hour).sum()
    return {"mean_w": joules.sum() / seconds.sum(), "energy_kwh": joules.sum() / 3.6e6,
            "week": list(week)}


if __name__ == "__main__":
    if sys.argv[1] == "--has":
        print(f"pandas {pandas.__version__}")
    else:
        print(json.dumps(reckon(sys.argv[1])))
