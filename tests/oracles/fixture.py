"""Writes an oracle's answers as a fixture, or with --check compares them with the one
that is committed. Nobody edits such a fixture by hand."""

import argparse
import json
import pathlib
import sys

FIXTURES = pathlib.Path(__file__).resolve().parent.parent / "fixtures"

# Far below what the engine is held to, far above what another machine's libm, or one
# step more of an oracle's iteration, can make of the same sum.
RELATIVE = 1e-6
ABSOLUTE = 1e-6


def rounded(number):
    return float(f"{number:.9g}")


def main(name, build):
    parser = argparse.ArgumentParser()
    parser.add_argument("--check", action="store_true", help="compare with the committed fixture, write nothing")
    path = FIXTURES / name
    if not parser.parse_args().check:
        path.write_text(written(build()))
        return
    differences = list(compare(json.loads(path.read_text()), build(), name))
    if differences:
        sys.exit("\n".join([f"{path} is not what the oracle says now:", *differences[:20]]))
    print(f"{name}: as the oracle says")


def written(fixture):
    """JSON with one row a line, so that a difference reads like one."""
    lines = []
    for key, value in fixture.items():
        if isinstance(value, list) and value and isinstance(value[0], list):
            rows = ",\n    ".join(json.dumps(row) for row in value)
            lines.append(f"  {json.dumps(key)}: [\n    {rows}\n  ]")
        else:
            lines.append(f"  {json.dumps(key)}: {json.dumps(value)}")
    return "{\n" + ",\n".join(lines) + "\n}\n"


def compare(committed, live, where):
    if isinstance(live, dict) and isinstance(committed, dict) and live.keys() == committed.keys():
        for key in live:
            yield from compare(committed[key], live[key], f"{where} {key}")
    elif isinstance(live, list) and isinstance(committed, list) and len(live) == len(committed):
        for index, pair in enumerate(zip(committed, live)):
            yield from compare(*pair, f"{where}[{index}]")
    elif isinstance(live, float) and isinstance(committed, (int, float)):
        if abs(live - committed) > ABSOLUTE + RELATIVE * abs(live):
            yield f"{where}: {committed} is committed, {live} computed"
    elif live != committed:
        yield f"{where}: {committed!r} is committed, {live!r} computed"
