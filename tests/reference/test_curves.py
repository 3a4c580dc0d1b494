"""Run lengths of the practice curves by Markov chains, as Brook and Evans (1972, Biometrika 59:539) compute them, with numpy and scipy.

The chain itself is first held to published run lengths of charts of a normal mean, as the manual of R's package spc states them (examples of
`xcusum.arl`: read): Brook and Evans 1972, Vance 1986, Waldmann 1986. Then the same chain, with two steps instead of a normal one, is held against what our
curves do over 20,000 made-up rows (examples/run_lengths.rs).
"""

import json
import math
import subprocess

import numpy as np
import pytest
from conftest import PROJECT
from scipy.stats import norm


def mean_run_length(between):
    """Mean steps to absorption from state 0, `between` the chances of one state to another that is not absorbing."""
    n = len(between)
    return np.linalg.solve(np.eye(n) - between, np.ones(n))[0]


def normal_chart(k, h, mu, n=1200):
    """An upward chart of a normal mean, S = max(0, S + X - k) until S >= h, in n states of equal width."""
    w = 2 * h / (2 * n - 1)
    i, j = np.arange(n)[:, None], np.arange(n)[None, :]
    upper = norm.cdf((j - i) * w + w / 2 + k - mu)
    lower = np.where(j == 0, 0.0, norm.cdf((j - i) * w - w / 2 + k - mu))
    return mean_run_length(upper - lower)


PUBLISHED = [
    # k, h, mu, run length, places that are printed
    (0.5, 3, 0.0, 117.59, 0.25),  # Brook and Evans 1972: theirs has few states; spc calls it less accurate
    (0.5, 3, 1.5, 3.75, 0.006),
    (0.0, 10, -0.25, 2071.51, 0.5),  # Vance 1986
    (0.0, 10, 0.0, 124.66, 0.01),
    (0.0, 10, 0.25, 36.71, 0.01),
    (0.0, 10, 1.0, 10.75, 0.01),
    (0.5, 3, -0.5, 1963.0, 1.0),  # Waldmann 1986
    (0.5, 3, 0.0, 117.4, 0.25),
    (0.5, 3, 0.5, 17.35, 0.01),
]


@pytest.mark.parametrize("k, h, mu, published, within", PUBLISHED)
def test_the_chain_gives_published_run_lengths(k, h, mu, published, within):
    assert normal_chart(k, h, mu) == pytest.approx(published, abs=within)


@pytest.fixture(scope="module")
def charts():
    make = ["cargo", "run", "--release", "--locked", "--quiet", "--example", "run_lengths"]
    return json.loads(subprocess.run(make, cwd=PROJECT, check=True, capture_output=True, text=True).stdout)


def chain(failing, weights, low, high):
    """The exact chain of a sum of two steps from 0: states are (right, wrong) answers since it last stood at 0.

    `low` is None where the sum is held at 0. Gives mean run length and the chance that it ends at `high`.
    """
    states, todo, rows = {(0, 0): 0}, [(0, 0)], []
    while todo:
        right, wrong = todo.pop()
        here = states[(right, wrong)]
        for state, share in [((right + 1, wrong), 1 - failing), ((right, wrong + 1), failing)]:
            value = state[0] * weights[0] + state[1] * weights[1]
            if value >= high:
                rows.append((here, None, share, True))
                continue
            if low is not None and value <= low:
                rows.append((here, None, share, False))
                continue
            if low is None and value <= 0:
                state = (0, 0)
            if state[0] + state[1] > 900:  # such a row is too rare to matter
                continue
            if state not in states:
                states[state] = len(states)
                todo.append(state)
            rows.append((here, states[state], share, False))
    return states, rows


def solved(failing, weights, low, high):
    from scipy.sparse import coo_matrix, identity
    from scipy.sparse.linalg import spsolve

    states, rows = chain(failing, weights, low, high)
    n = len(states)
    inner = [(i, j, share) for i, j, share, _ in rows if j is not None]
    i, j, share = zip(*inner)
    matrix = identity(n, format="csc") - coo_matrix((share, (i, j)), shape=(n, n)).tocsc()
    ends = np.zeros(n)
    for i, j, share, top in rows:
        if j is None and top:
            ends[i] += share
    return spsolve(matrix, np.ones(n))[0], spsolve(matrix, ends)[0]


def test_limits_are_the_papers(charts):
    for chart in charts:
        rates, limits = chart["rates"], chart["limits"]
        p0, p1 = rates["acceptable"], rates["unacceptable"]
        total = math.log(p1 / p0) + math.log((1 - p0) / (1 - p1))
        assert limits["s"] == pytest.approx(math.log((1 - p0) / (1 - p1)) / total, rel=1e-12)
        assert limits["h0"] == pytest.approx(math.log((1 - rates["alpha"]) / rates["beta"]) / total, rel=1e-12)
        assert limits["h1"] == pytest.approx(math.log((1 - rates["beta"]) / rates["alpha"]) / total, rel=1e-12)
        assert chart["weights"] == pytest.approx([math.log((1 - p0) / (1 - p1)), math.log(p0 / p1)], rel=1e-12)


def test_the_cusum_meets_its_limits_when_the_chain_says(charts):
    """Mean run length and share of the wrong limit within four standard errors, and the errors at most alpha and beta."""
    for chart in charts:
        s, h0, h1 = (chart["limits"][key] for key in ["s", "h0", "h1"])
        for run in chart["runs"]:
            mean, upper = solved(run["failing"], [-s, 1 - s], -h0, h1)
            error = math.sqrt(run["variance"] / run["rows"])
            print(f"{chart['rates']['acceptable']} {run['failing']}: chain {mean:.2f} {upper:.4f}, ours {run['mean']:.2f} {run['unacceptable']:.4f}")
            assert abs(mean - run["mean"]) < 4 * error
            assert abs(upper - run["unacceptable"]) < 4 * math.sqrt(upper * (1 - upper) / run["rows"])
            wrong = upper if run["failing"] == chart["rates"]["acceptable"] else 1 - upper
            assert 0 < wrong < 0.1


def test_the_learning_curve_says_reached_when_the_chain_says(charts):
    for chart in charts:
        h, weights = chart["rates"]["reached_at"], chart["weights"]
        good = chart["runs"][0]
        mean, _ = solved(good["failing"], weights, None, h)
        assert good["never"] < 0.01 * good["rows"], "who is good reaches it"
        n = good["rows"] - good["never"]
        ours = good["reached_sum"] / n
        error = math.sqrt((good["reached_squares"] / n - ours**2) / n)
        cut = good["never"] * good["most"] / good["rows"]  # what the rows that were cut could add, twice over
        print(f"{chart['rates']['acceptable']}: chain {mean:.2f}, ours {ours:.2f}, {good['never']} never")
        assert abs(mean - ours) < 4 * error + 2 * cut
        # Within sixty answers, by powers of the chain.
        for run in chart["runs"]:
            states, rows = chain(run["failing"], weights, None, h)
            here = np.zeros(len(states))
            here[0] = 1.0
            reached = 0.0
            for _ in range(60):
                after = np.zeros(len(states))
                for i, j, share, top in rows:
                    if j is None:
                        reached += here[i] * share * top
                    else:
                        after[j] += here[i] * share
                here = after
            assert reached == pytest.approx(run["chance_in_60"], abs=1e-9)
