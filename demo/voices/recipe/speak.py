"""Speaks every line of a cast that has no recording yet.

usage: speak.py VOICES_DIR LINES.tsv CAST.tsv KOKORO_CONFIG KOKORO_VOICES

LINES has the columns `file` and `say`, CAST `file`, `voice` ("engine:voice") and `speed`; files are relative to
VOICES_DIR. Writes 16 kHz mono FLAC with a little silence at both ends.
"""

import csv
import math
import pathlib
import sys

import numpy as np
import soundfile
from scipy.signal import resample_poly

import engines

RATE = 16_000
BEFORE_S, AFTER_S = 0.10, 0.15
PEAK = 0.6


def rows(path: str) -> list[dict[str, str]]:
    with open(path, encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file, delimiter="\t", quoting=csv.QUOTE_NONE))


def tidy(samples: np.ndarray, rate: int) -> np.ndarray:
    """At 16 kHz, without the silence around it but for a little, and all equally loud."""
    shared = math.gcd(rate, RATE)
    samples = resample_poly(samples, RATE // shared, rate // shared)
    samples = samples * (PEAK / max(1e-6, float(np.abs(samples).max())))
    loud = np.flatnonzero(np.abs(samples) > 0.02 * PEAK)
    samples = samples[loud[0] : loud[-1] + 1]
    return np.concatenate([np.zeros(int(BEFORE_S * RATE)), samples, np.zeros(int(AFTER_S * RATE))])


def main() -> None:
    folder, lines, cast, config, tables = sys.argv[1:6]
    said = {row["file"]: row["say"] for row in rows(lines) if row["file"]}
    kokoro = engines.Kokoro(pathlib.Path(config), pathlib.Path(tables))
    by_engine = {"kokoro": kokoro.say, "flite": engines.flite, "espeak": engines.espeak}
    for row in rows(cast):
        target = pathlib.Path(folder) / row["file"]
        if target.exists():
            continue
        engine, voice = row["voice"].split(":", 1)
        samples, rate = by_engine[engine](said[row["file"]], voice, float(row["speed"]))
        target.parent.mkdir(parents=True, exist_ok=True)
        soundfile.write(target, tidy(samples, rate), RATE, format="FLAC", subtype="PCM_16")


if __name__ == "__main__":
    main()
