"""Says how well a classifier tells the kinds apart, on sounds that trained nothing and on made ones.

python evaluate.py MODEL.tflite --packs PACKS --dev DEV --unpacked UNPACKED_PACKAGES [--each 150]
"""

import argparse

import numpy as np
import tensorflow as tf

from kinds import KINDS
from mixing import Bench
from sources import held_out

SURE = 0.6
TOOLS = ("impactTool", "grinderOrSaw")


class Classifier:
    def __init__(self, path):
        self.inner = tf.lite.Interpreter(path)
        self.inner.allocate_tensors()
        self.at_in = self.inner.get_input_details()[0]["index"]
        self.at_out = self.inner.get_output_details()[0]["index"]

    def scores(self, samples):
        self.inner.set_tensor(self.at_in, samples[None].astype(np.float32))
        self.inner.invoke()
        return self.inner.get_tensor(self.at_out)[0]


def told(classifier, bench, kind, each, level_db=None):
    """Share of windows for which each kind scores highest, and in which the kind itself is sure."""
    found = np.zeros(len(KINDS))
    sure = 0
    for _ in range(each):
        scores = classifier.scores(bench.window(kind, level_db=level_db)[0])
        found[np.argmax(scores)] += 1
        sure += scores[KINDS.index(kind)] >= SURE
    return [*(found / each), sure / each]


def show(title, rows):
    print(f"\n{title}\n| is \\ told | " + " | ".join(KINDS) + " | sure |\n|" + " --- |" * (len(KINDS) + 2))
    for name, row in rows.items():
        print(f"| {name} | " + " | ".join(f"{100 * share:.0f}" for share in row) + " |", flush=True)


def bench_of(seed, kind, sounds, blows=()):
    return Bench(np.random.default_rng(seed), {kind: sounds, "blow": list(blows)}, made_share=0.0, blow_share=1.0)


def mixtures(classifier, bench, each):
    """Speech under a tool: how often tool and speech are each told."""
    print("\n| tool over speech, dB | tool told, % | speech told, % |\n| --- | --- | --- |")
    for over_db in (-20, -15, -10, -5, 0, 5, 10, 15):
        told = np.zeros(2)
        for at in range(each):
            samples, _ = bench.window(TOOLS[at % 2], "speech", over_db, level_db=-25)
            scores = classifier.scores(samples)
            told += [max(scores[KINDS.index(tool)] for tool in TOOLS) >= SURE, scores[0] >= SURE]
        print(f"| {over_db} | {100 * told[0] / each:.0f} | {100 * told[1] / each:.0f} |")


def main():
    options = argparse.ArgumentParser()
    options.add_argument("model")
    options.add_argument("--packs", required=True)
    options.add_argument("--dev", required=True)
    options.add_argument("--unpacked", required=True)
    options.add_argument("--each", type=int, default=150)
    given = options.parse_args()
    classifier = Classifier(given.model)
    sources = held_out(given.packs, given.dev, given.unpacked)
    benches = {f"{one[0]}: {one[1]}": (one[0], bench_of(77, one[0], *one[2:])) for one in sources}
    for level_db in (None, -15, -30, -45):
        level = "any level" if level_db is None else f"{level_db} dB"
        each = given.each if level_db is None else given.each // 3
        rows = {name: told(classifier, bench, kind, each, level_db) for name, (kind, bench) in benches.items()}
        show(f"Recorded, held out, {level}, %", rows)
    speech = {"speech": sources[0][2]}
    made = Bench(np.random.default_rng(78), speech, made_share=1.0)
    show("Made, new draws, any level, %", {kind: told(classifier, made, kind, given.each) for kind in KINDS})
    mixtures(classifier, made, given.each)


if __name__ == "__main__":
    main()
