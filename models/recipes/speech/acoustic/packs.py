"""Training packs: long Ogg-Opus files with the lengths and phone labels of the utterances in them."""

import glob
import json
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass

import numpy as np
import soundfile as sf

SHARES = {"an4": 0.17, "ww": 0.06, "fsdd": 0.16, "sti": 0.11, "kokoro": 0.38, "other": 0.12}
MOST_PARTS = 6


@dataclass
class Utterance:
    sound: np.ndarray
    labels: np.ndarray
    source: str
    speaker: str


def read_pack(path):
    """The utterances of one pack; what is too short for its labels, or too long, is left out."""
    with open(path[: -len(".opus")] + ".json") as file:
        index = json.load(file)
    sound, _ = sf.read(path, dtype="int16")
    utterances, start = [], 0
    for length, meta in zip(index["lens"], index["meta"]):
        labels = np.array(meta["y"], dtype=np.int32)
        source = meta["src"] if meta["src"] in SHARES or meta["src"] == "impact" else "other"
        utterances.append(Utterance(sound[start : start + length], labels, source, meta.get("spk", "")))
        start += length
    return utterances


def fits(utterance):
    length = len(utterance.sound)
    return 2400 <= length < 11 * 16000 and len(utterance.labels) > 0 and length / 16000 > 0.045 * len(utterance.labels)


def read_packs(folder):
    """(utterances to train on, recorded impacts)."""
    with ThreadPoolExecutor(8) as pool:
        every = [u for pack in pool.map(read_pack, sorted(glob.glob(f"{folder}/*.opus"))) for u in pack]
    impacts = [u.sound for u in every if u.source == "impact"]
    return [u for u in every if u.source != "impact" and fits(u)], impacts


class Sampler:
    """Draws training examples: one utterance, or several with pauses between them, by the shares of the sources."""

    def __init__(self, utterances, without=(), held_out=0.02, seed=1):
        draw = np.random.RandomState(seed)
        self.utterances = utterances
        self.groups, self.kept = {}, {}
        for number, one in enumerate(utterances):
            if one.source in without:
                continue
            group = self.kept if draw.rand() < held_out and one.source != "fsdd" else self.groups
            group.setdefault(one.source, []).append(number)
        self.names = [name for name in SHARES if name in self.groups]
        self.shares = np.array([SHARES[name] for name in self.names])
        self.shares /= self.shares.sum()
        self.speakers = {}
        for number in self.groups.get("fsdd", []):
            self.speakers.setdefault(utterances[number].speaker, []).append(number)
        self.speakers = list(self.speakers.values())

    def example(self, draw):
        """([(start, utterance, gain)], labels, samples)."""
        name = self.names[draw.choice(len(self.names), p=self.shares)]
        if name == "fsdd":  # single digits: several of one speaker make a number
            own = self.speakers[draw.randint(len(self.speakers))]
            count = draw.choice([1, 2, 3, 4, 5, 6], p=[0.15, 0.15, 0.2, 0.2, 0.18, 0.12])
            picked, longest_gap, shortest_gap = [own[draw.randint(len(own))] for _ in range(count)], 0.3, 0.0
        else:
            own, longest_gap, shortest_gap = self.groups[name], 0.6, 0.05
            picked = [own[draw.randint(len(own))]]
            while len(picked) < MOST_PARTS and draw.rand() < 0.3 and self.samples(picked) < 3 * 16000:
                picked.append(own[draw.randint(len(own))])
        at = int(draw.uniform(0, 0.9) * 16000) if draw.rand() < 0.8 else 0
        parts = []
        for place, number in enumerate(picked):
            if place:
                at += int(draw.uniform(shortest_gap, longest_gap) * 16000)
            parts.append((at, number, 10 ** (draw.uniform(-6, 6) / 20) if place else 1.0))
            at += len(self.utterances[number].sound)
        labels = np.concatenate([self.utterances[number].labels for number in picked])
        return parts, labels, at + int(draw.uniform(0.15, 0.9) * 16000)

    def samples(self, picked):
        return sum(len(self.utterances[number].sound) for number in picked)

    def batches(self, draw, size, among=4):
        """Batches of examples of about the same length."""
        examples = sorted((self.example(draw) for _ in range(among * size)), key=lambda one: one[2])
        groups = [examples[n * size : (n + 1) * size] for n in range(among)]
        draw.shuffle(groups)
        return groups
