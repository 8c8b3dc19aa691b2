"""docs/schema, judged by a validator that is not ours: Debian's python3-jsonschema.

usage: validate_schema.py SOURCE_FOLDER PROGRAM

The schemas are sound; they take every right file of the project, refuse the wrong ones of
schema_cases.py, and never refuse what the program takes. Each failure is one line.
"""

import concurrent.futures
import copy
import datetime
import json
import os
import pathlib
import re
import subprocess
import sys
import tempfile
import tomllib

import jsonschema

import schema_cases

KINDS = ("study", "profile", "tariff")
RIGHT_FILES = ("profiles/*.toml", "tariffs/*.toml", "docs/examples/*.toml", "tests/bench/*.toml",
               "tests/samples/*/*.toml")


def as_json(value):
    """Dates become texts: JSON has none."""
    if isinstance(value, dict):
        return {key: as_json(inside) for key, inside in value.items()}
    if isinstance(value, list):
        return [as_json(inside) for inside in value]
    if isinstance(value, (datetime.date, datetime.time)):
        return value.isoformat()
    return value


def kind_of(document):
    if "candidate" in document:
        return "study"
    return "tariff" if "currency" in document else "profile"


def all_of(key, value):
    """Everything that stands under this key, however deep."""
    if isinstance(value, dict) and key in value:
        yield value[key]
    for inside in value.values() if isinstance(value, dict) else value:
        if isinstance(inside, (dict, list)):
            yield from all_of(key, inside)


class Validation:
    def __init__(self, root, program):
        self.root = pathlib.Path(root)
        self.program = pathlib.Path(program)
        self.checked = {}
        self.failures = []
        self.schemas = {kind: json.loads(self.schema_path(kind).read_text("utf-8"))
                        for kind in KINDS}
        self.validators = {
            kind: jsonschema.Draft7Validator(schema, format_checker=jsonschema.FormatChecker())
            for kind, schema in self.schemas.items()}

    def schema_path(self, kind):
        return self.root / "docs" / "schema" / f"{kind}.schema.json"

    def expect(self, what, is_so, message):
        self.checked[what] = self.checked.get(what, 0) + 1
        if not is_so:
            self.failures.append(f"{what}: {message}")

    def problem(self, kind, text):
        """Why the schema refuses the text, None where it takes it."""
        document = as_json(tomllib.loads(text))
        error = jsonschema.exceptions.best_match(self.validators[kind].iter_errors(document))
        if error is None:
            return None
        return f"{'.'.join(str(part) for part in error.absolute_path)}: {error.message}"

    def taken_by_program(self, paths):
        """The files in which `check` finds no mistake."""
        run = subprocess.run([self.program, "check", *paths], capture_output=True, text=True,
                             stdin=subprocess.DEVNULL, check=False)
        if run.returncode not in (0, 2):
            raise RuntimeError(f"check ended with {run.returncode}: {run.stderr}")
        if " more error" in run.stderr and len(paths) > 1:  # Only the first 50 are told.
            half = len(paths) // 2
            return self.taken_by_program(paths[:half]) | self.taken_by_program(paths[half:])
        blamed = {line.split(":", 1)[0] for line in run.stderr.splitlines() if ": error: " in line}
        return {path for path in paths if path not in blamed}

    def programs_verdicts(self, texts):
        """For each text, does `check` take it as a file?"""
        with tempfile.TemporaryDirectory() as folder:
            paths = [f"{folder}/{number}.toml" for number in range(len(texts))]
            for path, text in zip(paths, texts):
                pathlib.Path(path).write_text(text, "utf-8")
            batches = [paths[i:i + 16] for i in range(0, len(paths), 16)]
            with concurrent.futures.ThreadPoolExecutor(os.cpu_count()) as pool:
                taken = set().union(*pool.map(self.taken_by_program, batches))
        return [path in taken for path in paths]

    # --- the checks ----------------------------------------------------------------------------

    def check_schemas(self):
        for kind, schema in self.schemas.items():
            try:
                jsonschema.Draft7Validator.check_schema(schema)
                problem = ""
            except jsonschema.SchemaError as error:
                problem = error.message
            self.expect("sound schemas", not problem, f"{kind}: {problem}")
            used = set(all_of("$ref", schema))
            known = {f"#/definitions/{name}" for name in schema["definitions"]}
            self.expect("definitions", used == known, f"{kind}: used or there only: {used ^ known}")

    def check_right_files(self):
        for pattern in RIGHT_FILES:
            paths = sorted(self.root.glob(pattern))
            self.expect("folders", paths, f"no file {pattern}")
            for path in paths:
                text = path.read_text("utf-8")
                problem = self.problem(kind_of(tomllib.loads(text)), text)
                self.expect("right files", problem is None, f"{path}: {problem}")

    def check_documents(self):
        for path in [self.root / "README.md", *sorted((self.root / "docs").rglob("*.md"))]:
            for text in re.findall(r"^```toml\n(.*?)^```$", path.read_text("utf-8"), re.M | re.S):
                kind = re.match(r"# (\w+)", text).group(1)
                problem = self.problem(kind, text)
                self.expect("examples", problem is None, f"{path}: {problem}\n{text}")

    def check_right_cases(self):
        used = {part for right in schema_cases.RIGHT.values()
                for path in places_in(tomllib.loads(right)) for part in path}
        for kind, schema in self.schemas.items():
            known = {key for keys in all_of("properties", schema) for key in keys}
            self.expect("keys", known <= used, f"{kind}: in no right case: {known - used}")
        verdicts = self.programs_verdicts(list(schema_cases.RIGHT.values()))
        for (name, text), is_taken in zip(schema_cases.RIGHT.items(), verdicts):
            problem = self.problem(name.split()[-1], text)
            self.expect("right files", problem is None, f"{name}: {problem}")
            self.expect("right files", is_taken, f"{name}: the program refuses it")

    def check_wrong_files(self):
        texts = []
        for name, what, old, new in schema_cases.WRONG:
            right = schema_cases.RIGHT[name]
            self.expect("changes", old in right, f"{what}: no {old!r} to change")
            texts.append(right.replace(old, new, 1))
            refused = self.problem(name.split()[-1], texts[-1]) is not None
            self.expect("wrong files", refused, f"{name}, {what}: the schema takes it")
        for case, is_taken in zip(schema_cases.WRONG, self.programs_verdicts(texts)):
            self.expect("wrong files", not is_taken, f"{case[0]}, {case[1]}: the program takes it")

    def check_texts(self):
        cases = [(key, text) for key, texts in schema_cases.TEXTS.items() for text in texts]
        files = [f'currency = "EUR"\nband = [{{ name = "a", price = 1, {key} = "{text}" }}, '
                 f'{{ name = "b", price = 1 }}]\n' for key, text in cases]
        verdicts = self.programs_verdicts(files)
        for (key, text), file, is_taken in zip(cases, files, verdicts):
            by_schema = self.problem("tariff", file) is None
            self.expect("texts", by_schema == is_taken,
                        f"{key} = {text!r}: the program says {is_taken}, the schema {by_schema}")

    def check_no_false_alarm(self):
        changed = [(name.split()[-1], text) for name, right in schema_cases.RIGHT.items()
                   for text in variants(right)]
        verdicts = self.programs_verdicts([text for _, text in changed])
        self.expect("variants", sum(verdicts) > 500, "the program takes hardly any")
        for (kind, text), is_taken in zip(changed, verdicts):
            if is_taken:
                problem = self.problem(kind, text)
                self.expect("false alarms", problem is None, f"{kind}: {problem}\n{text}")

    def run(self):
        self.check_schemas()
        if self.failures:  # Nothing can be judged by a schema that is none.
            return
        self.check_right_files()
        self.check_documents()
        self.check_right_cases()
        self.check_wrong_files()
        self.check_texts()
        self.check_no_false_alarm()


# --- variants of a file ------------------------------------------------------------------------

class Literal(str):
    """TOML text that stands for a value."""


def written(value):
    """A value as TOML, tables in braces."""
    if isinstance(value, dict):
        return "{ " + ", ".join(f"{json.dumps(k)} = {written(v)}" for k, v in value.items()) + " }"
    if isinstance(value, list):
        return "[" + ", ".join(written(inside) for inside in value) + "]"
    if isinstance(value, Literal):
        return value
    if isinstance(value, datetime.date):
        return value.isoformat()
    return json.dumps(value, ensure_ascii=False)


def places_in(value, path=()):
    """Every key and element, as the path to it."""
    items = value.items() if isinstance(value, dict) else enumerate(value)
    for key, inside in items:
        yield (*path, key)
        if isinstance(inside, (dict, list)):
            yield from places_in(inside, (*path, key))


def variants(text):
    """The file with each of its values left out, or another in its place."""
    document = tomllib.loads(text)
    for *path, last in list(places_in(document)):
        for literal in [None, *schema_cases.IN_PLACE]:
            changed = copy.deepcopy(document)
            home = changed
            for key in path:
                home = home[key]
            if literal is None:
                del home[last]
            else:
                home[last] = Literal(literal)
            yield "".join(f"{key} = {written(value)}\n" for key, value in changed.items())


def main():
    validation = Validation(*sys.argv[1:])
    validation.run()
    for failure in validation.failures:
        print("FAILED", failure)
    print(", ".join(f"{what}: {count}" for what, count in validation.checked.items()))
    return 1 if validation.failures else 0


if __name__ == "__main__":
    sys.exit(main())
