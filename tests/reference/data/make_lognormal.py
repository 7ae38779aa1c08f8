"""Makes lognormal.json with scipy and numpy: python make_lognormal.py > lognormal.json"""

import json

import numpy
import scipy
from scipy import integrate, stats

rng = numpy.random.default_rng(7)
CASES = [
    [(10, 0.3)] * 12,
    [(4, 0.5), (12, 0.4), (6, 0.2), (25, 0.35), (3, 0.6)],
    [(30, 0.5)],
    [(1, 0.7)] * 30,
]


def sums(steps):
    total = sum(m * numpy.exp(s * rng.standard_normal(2_000_000)) for m, s in steps)
    return {
        "steps": [[m, s] for m, s in steps],
        "median": float(numpy.quantile(total, 0.5)),
        "p80": float(numpy.quantile(total, 0.8)),
    }


def rest(median, sigma, spent):
    dist = stats.lognorm(s=sigma, scale=median)
    tail = dist.sf(spent)
    mean = integrate.quad(lambda t: dist.sf(spent + t) / tail, 0, numpy.inf, epsabs=0, epsrel=1e-11)[0]
    square = integrate.quad(lambda t: 2 * t * dist.sf(spent + t) / tail, 0, numpy.inf, epsabs=0, epsrel=1e-11)[0]
    return [median, sigma, spent, mean, square - mean**2]


print(
    json.dumps(
        {
            "made": f"scipy {scipy.__version__}, numpy {numpy.__version__}",
            "sums": [sums(c) for c in CASES],
            "remaining": [rest(m, s, t) for m, s in ((10, 0.3), (4, 0.6)) for t in (1, 5, 10, 20, 40)],
        },
        indent=1,
    )
)
