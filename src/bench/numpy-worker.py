"""
Simulates boards with NumPy, as fast as NumPy can be had: the strongest opponent that we know how to write.

Reads one command a line and answers with one line of JSON. Before this text stand `sample` and `evaluate` of one board:
sample(rng, x, n, t) draws n boards into the rows of x; evaluate(x, y, w, t) computes the rows of y from them.
"""
import json
import resource
import sys
import time
from multiprocessing import Pipe, Process, RawArray

BLOCK = 8192
CHANCES = [0.00135, 0.025, 0.5, 0.975, 0.99865]
BINS = 2000
BARS = 40


def truncate(rng, x):
    while True:
        beyond = np.flatnonzero(np.abs(x) > 3.0)
        if beyond.size == 0:
            return
        x[beyond] = rng.standard_normal(beyond.size)


def triangular(rng, x, t, low, high, split, rising, falling):
    rng.random(out=x)
    rises = x < split
    np.subtract(1.0, x, out=t)
    np.multiply(x, rising, out=x)
    np.sqrt(x, out=x)
    np.add(x, low, out=x)
    np.multiply(t, falling, out=t)
    np.sqrt(t, out=t)
    np.subtract(high, t, out=t)
    np.copyto(x, t, where=~rises)


def simulate(seed, values, first, last):
    """Draws and computes boards first … last − 1 into the columns of `values`; returns seconds of each."""
    rng = np.random.Generator(np.random.SFC64(seed))
    x = np.empty((INPUTS, BLOCK))
    w = np.empty((ARRAYS, BLOCK))
    t = np.empty(BLOCK)
    spent = [0.0, 0.0]
    for start in range(first, last, BLOCK):
        n = min(BLOCK, last - start)
        begin = time.perf_counter()
        sample(rng, x[:, :n], n, t[:n])
        middle = time.perf_counter()
        evaluate(x[:, :n], values[:, start:start + n], w[:, :n], t[:n])
        end = time.perf_counter()
        spent[0] += middle - begin
        spent[1] += end - middle
    return spent


def summarise(v):
    """Mean, deviation, exact quantiles, bars and failures of one output: counts first, then only what stands in few bins."""
    n = v.size
    mean = v.mean()
    d = v - mean
    sd = np.sqrt(np.dot(d, d) / (n - 1))
    failures = int(n - np.count_nonzero(v >= 0))
    if not np.isfinite(sd):
        return [None, None, None, None, failures]
    low, high = v.min(), v.max()
    if low == high:
        return [mean, 0.0, [low] * 5, [n] + [0] * (BARS - 1), failures]
    np.subtract(v, low, out=d)
    np.multiply(d, BINS / (high - low), out=d)
    place = d.astype(np.int32)
    np.minimum(place, BINS - 1, out=place)
    counts = np.bincount(place, minlength=BINS)
    below = np.concatenate(([0], np.cumsum(counts)))
    quantiles = []
    for p in CHANCES:
        at = (n - 1) * p
        rank = int(at)
        a, b = np.searchsorted(below, [rank, min(rank + 1, n - 1)], side="right") - 1
        part = np.sort(v[(place >= a) & (place <= b)])
        x, y = part[rank - below[a]], part[min(rank + 1, n - 1) - below[a]]
        quantiles.append(x + (y - x) * (at - rank))
    return [mean, sd, quantiles, counts.reshape(BARS, -1).sum(axis=1).tolist(), failures]


def alone(seed, trials):
    begin = time.perf_counter()
    values = np.empty((OUTPUTS, trials))
    spent = simulate(seed, values, 0, trials)
    middle = time.perf_counter()
    results = [summarise(v) for v in values]
    end = time.perf_counter()
    return {"total": end - begin, "sample": spent[0], "evaluate": spent[1], "summarise": end - middle, "results": results}


class Helpers:
    """Two processes on the same values: each draws half of the boards, then summarises half of the outputs."""

    def __init__(self, trials):
        self.trials = trials
        self.memory = RawArray("d", OUTPUTS * trials)
        self.pipes = []
        self.processes = []
        for part in (0, 1):
            near, far = Pipe()
            process = Process(target=self.work, args=(part, far), daemon=True)
            process.start()
            self.pipes.append(near)
            self.processes.append(process)

    def work(self, part, pipe):
        values = np.frombuffer(self.memory).reshape(OUTPUTS, self.trials)
        half = self.trials // 2
        while True:
            what, seed = pipe.recv()
            if what == "draw":
                simulate([seed, part], values, part * half, half if part == 0 else self.trials)
                pipe.send(None)
            else:
                pipe.send([summarise(v) for v in values[part::2]])

    def run(self, seed):
        begin = time.perf_counter()
        for what in ("draw", "summarise"):
            for pipe in self.pipes:
                pipe.send((what, seed))
            answers = [pipe.recv() for pipe in self.pipes]
        results = [None] * OUTPUTS
        for part in (0, 1):
            results[part::2] = answers[part]
        return {"total": time.perf_counter() - begin, "results": results}


np.seterr(all="ignore")
helpers = {}
for line in sys.stdin:
    command, trials, seed = line.split()
    trials, seed = int(trials), int(seed)
    if command == "alone":
        answer = alone(seed, trials)
    else:
        if trials not in helpers:
            helpers[trials] = Helpers(trials)
        answer = helpers[trials].run(seed)
    answer["memory"] = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
    print(json.dumps(answer), flush=True)
