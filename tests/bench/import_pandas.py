"""A million survey points: pandas' reader beside ours, by turns, so that what else the machine does falls on both.

    python3 tests/bench/import_pandas.py build/release/tests/bench/bench_import

Prints the best of five of each and the ratio. Needs Debian's python3-pandas.
"""

import json
import os
import subprocess
import sys
import tempfile
import time

import pandas

CODES = ["GND", "KERB", "EP", "TC", "MH", "GND", "GND"]


def survey(points):
    """The same numbers as in import_bench.cpp."""
    state = 1

    def draw():
        nonlocal state
        state = (state * 6364136223846793005 + 1442695040888963407) % 2**64
        return state >> 33

    for i in range(1, points + 1):
        north, east, height = 5540000 + draw() % 500000 / 1000, 500000 + draw() % 500000 / 1000, 100 + draw() % 5000 / 1000
        yield f"{i},{north:.3f},{east:.3f},{height:.3f},{CODES[draw() % 7]}\n"


def ours(bench, name):
    words = [bench, f"--benchmark_filter=^{name}", "--benchmark_format=json"]
    for run in json.loads(subprocess.run(words, check=True, capture_output=True).stdout)["benchmarks"]:
        if run["name"].startswith(name):
            return run["real_time"] / 1000
    raise SystemExit(f"no {name} in {bench}")


def theirs(path):
    start = time.perf_counter()
    table = pandas.read_csv(path, header=None, names=["p", "n", "e", "z", "d"])
    assert len(table) == 1_000_000
    return time.perf_counter() - start


def main():
    with tempfile.NamedTemporaryFile("w", suffix=".csv", delete=False) as file:
        file.writelines(survey(1_000_000))
    try:
        times = [(ours(sys.argv[1], "survey_text"), ours(sys.argv[1], "survey_file"), theirs(file.name)) for _ in range(5)]
    finally:
        os.unlink(file.name)
    text, whole, pandas_time = (min(column) for column in zip(*times))
    print(f"text {text:.3f} s, file by its process {whole:.3f} s, pandas {pandas_time:.3f} s")
    print(f"ratio {text / pandas_time:.2f} and {whole / pandas_time:.2f}")


if __name__ == "__main__":
    main()
