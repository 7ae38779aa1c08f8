"""Packs: long Ogg-Opus files with the lengths and phone labels of the utterances in them."""

import glob
import json
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass

import numpy as np
import soundfile as sf

IMPACT = "impact"


@dataclass
class Utterance:
    sound: np.ndarray
    labels: np.ndarray
    source: str
    speaker: str


def read_pack(path):
    with open(path[: -len(".opus")] + ".json") as file:
        index = json.load(file)
    sound, _ = sf.read(path, dtype="int16")
    utterances, start = [], 0
    for length, meta in zip(index["lens"], index["meta"]):
        labels = np.array(meta["y"], dtype=np.int32)
        utterances.append(Utterance(sound[start : start + length], labels, meta["src"], meta.get("spk", "")))
        start += length
    return utterances


def read_folder(folder):
    """Every utterance of the packs in a folder, in the order of their names."""
    with ThreadPoolExecutor(8) as pool:
        return [u for pack in pool.map(read_pack, sorted(glob.glob(f"{folder}/*.opus"))) for u in pack]


def fits(utterance):
    """Whether a sound is long enough for its labels, and not too long for a batch."""
    length = len(utterance.sound)
    return 2400 <= length < 11 * 16000 and len(utterance.labels) > 0 and length / 16000 > 0.045 * len(utterance.labels)


def read_training(folder):
    """(utterances to train on, recorded impacts)."""
    every = read_folder(folder)
    impacts = [u.sound for u in every if u.source == IMPACT]
    return [u for u in every if u.source != IMPACT and fits(u)], impacts
