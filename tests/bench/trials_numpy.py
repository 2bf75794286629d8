"""The same 20,000 trials of 20 m written with NumPy's arrays, for information beside bench_trials.

One bore a row: level and aim, steering constant, wander in grade and heading at each of 200 steps of 0.10 m, curvature from a
table by depth, refusal, exit window. No utilities. Needs Debian's python3-numpy. Prints the best of five runs and, as a floor,
the time of drawing the same normals.
"""

import time

import numpy as np

COUNT, STEP, LENGTH = 20_000, 0.10, 20.0
SIGMA, LEVEL, AIM, POSITION, REFUSAL = 0.0025, 0.005, 0.005, 0.005, 0.001
MEAN_C, SD_C = 0.04, 0.03
DEPTH = 1.3
# Curvature for c = 1 by depth, rough values of firm clay and a 65 mm tool: only the work counts here, not the answer.
DEPTHS = np.linspace(0.05, 4.0, 200)
TURN = 0.08 * np.exp(-DEPTHS / 0.15) - 0.0012


def trials(rng):
    log_var = np.log1p((SD_C / MEAN_C) ** 2)
    c = np.exp(np.log(MEAN_C) - log_var / 2 + np.sqrt(log_var) * rng.standard_normal(COUNT))
    y = POSITION * rng.standard_normal(COUNT)
    z = -DEPTH + POSITION * rng.standard_normal(COUNT)
    grade = LEVEL * rng.standard_normal(COUNT)
    heading = AIM * rng.standard_normal(COUNT)
    x = np.zeros(COUNT)
    stopped = rng.exponential(1 / REFUSAL, COUNT) < LENGTH
    wander = SIGMA * np.sqrt(STEP)
    for _ in range(int(LENGTH / STEP)):
        turn = c * np.interp(-z, DEPTHS, TURN)
        grade_mid = grade + 0.5 * STEP * turn
        level = STEP * np.cos(grade_mid)
        x += level * np.cos(heading)
        y += level * np.sin(heading)
        z += STEP * np.sin(grade_mid)
        grade += STEP * turn + wander * rng.standard_normal(COUNT)
        heading += wander * rng.standard_normal(COUNT)
    return np.count_nonzero(~stopped & (np.abs(y) < 0.6) & (z > -1.9) & (z < 0))


def floor(rng):
    total = 0.0
    for _ in range(int(LENGTH / STEP)):
        total += rng.standard_normal(COUNT)[0] + rng.standard_normal(COUNT)[0]
    return total


def best(work):
    times = []
    for _ in range(5):
        begin = time.perf_counter()
        work(np.random.default_rng(1))
        times.append(time.perf_counter() - begin)
    return 1e3 * min(times)


if __name__ == "__main__":
    whole, normals = best(trials), best(floor)
    print(f"numpy, one core: trials {whole:.0f} ms, the same normals {normals:.0f} ms, ratio {whole / normals:.2f}")
