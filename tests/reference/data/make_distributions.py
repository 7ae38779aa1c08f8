"""Makes distributions.json with scipy: python make_distributions.py > distributions.json"""

import json

import numpy
import scipy
from scipy import special, stats

zs = [-9, -6, -4.5, -3, -2, -1.959963984540054, -1, -0.5, -1e-9, 0, 0.25, 1, 1.4, 1.6448536269514722, 2, 3, 5]
ps = [1e-300, 1e-20, 1e-9, 1e-4, 0.01, 0.025, 0.05, 0.1, 0.2, 0.4, 0.5, 0.8, 0.9, 0.95, 0.975, 0.99, 0.9999]
xs = [-4, -2, -1, -0.1, 0, 1e-8, 0.1, 0.5, 1, 1.99, 2, 2.01, 3, 5, 10, 20]
freedoms = [1, 2, 3, 5, 9, 19, 24, 49, 99, 499]
tails = [0.001, 0.025, 0.05, 0.5, 0.95, 0.975, 0.999]

rng = numpy.random.default_rng(42)
samples = [[round(float(v), 2) for v in rng.lognormal(2, 0.6, n)] for n in (1, 2, 5, 10, 37)]

print(
    json.dumps(
        {
            "made": f"scipy {scipy.__version__}, numpy {numpy.__version__}",
            "erf": [[x, float(special.erf(x))] for x in xs],
            "erfc": [[x, float(special.erfc(x))] for x in xs],
            "normalCdf": [[z, float(stats.norm.cdf(z))] for z in zs],
            "normalQuantile": [[p, float(stats.norm.ppf(p))] for p in ps],
            "logGamma": [[x, float(special.gammaln(x))] for x in (0.1, 0.5, 1.5, 3, 7.25, 12, 80, 1000)],
            "chiSquareCdf": [
                [x, f, float(stats.chi2.cdf(x, f))] for f in freedoms for x in (0.1 * f, 0.7 * f, f, 1.5 * f)
            ],
            "chiSquareQuantile": [[p, f, float(stats.chi2.ppf(p, f))] for f in freedoms for p in tails],
            "quantile": [
                {
                    "sample": s,
                    "median": float(numpy.quantile(s, 0.5, method="linear")),
                    "p80": float(numpy.quantile(s, 0.8, method="linear")),
                    "p05": float(numpy.quantile(s, 0.05, method="linear")),
                    "mean": float(numpy.mean(s)),
                    "sd": float(numpy.std(s, ddof=1)) if len(s) > 1 else None,
                }
                for s in samples
            ],
        },
        indent=1,
    )
)
