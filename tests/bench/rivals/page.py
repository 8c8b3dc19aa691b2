"""A table in a document, between `<!-- NAME -->` and `<!-- end of NAME -->`: written or checked."""

import argparse
from pathlib import Path


def arguments(*more):
    parser = argparse.ArgumentParser()
    for option in ("--wattweek", "--study", *more):
        parser.add_argument(option, required=True)
    parser.add_argument("--write", metavar="PAGE.md", help="put the table into the page")
    parser.add_argument("--check", metavar="PAGE.md", help="fail where the page has another table")
    parser.add_argument("--repetitions", type=int, default=9)
    return parser.parse_args()


def deliver(name, table, options):
    print(table)
    begin, end = f"<!-- {name} -->\n", f"<!-- end of {name} -->\n"
    path = options.write or options.check
    if not path:
        return
    text = Path(path).read_text()
    if text.count(begin) != 1 or text.count(end) != 1:
        raise SystemExit(f"{path} has no {begin.strip()} ... {end.strip()}")
    before, rest = text.split(begin)
    found, after = rest.split(end)
    if options.write:
        Path(path).write_text(f"{before}{begin}{table}\n{end}{after}")
    elif found != f"{table}\n":
        raise SystemExit(
            f"{path} has another table than the one above, which the target `rivals_into_page` of "
            f"the preset `bench` puts there. It has:\n{found}"
        )
