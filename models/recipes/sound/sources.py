"""Recorded sounds, by kind: what trains, and what is only ever evaluated on. SOURCES.md has the licences."""

import io
import json
import struct
import zipfile
from math import gcd
from pathlib import Path

import numpy as np
import soundfile
from scipy.signal import resample_poly

from kinds import RATE_HZ

# Numbers of the sounds in the OpenSFX catalogue (the names are in it).
OPENSFX_TRAIN = {
    "impactTool": (33, 39),
    "grinderOrSaw": (56,),
    "engineOrCompressor": (11, 25, 27, 69),
    "alarm": (14, 35),
}
MUSIC_TRAIN = ("macroform-cold_day", "macroform-robot_dity", "macroform-the_simplicity")
MUSIC_HELD_OUT = ("manolo_camp-morning_coffee", "reno_project-system")
MUSIC_HELD_OUT_GAME = ("Rock", "City", "Beach", "pirate", "Jungle", "Castle", "snow", "Freeway")
KENNEY_TRAIN = 100
MUSIC_PART_S = 60


def at_our_rate(samples, rate_hz):
    mono = samples if samples.ndim == 1 else samples.mean(1)
    divisor = gcd(int(rate_hz), RATE_HZ)
    return resample_poly(mono, RATE_HZ // divisor, int(rate_hz) // divisor).astype(np.float32)


def read(source, longest_s=None):
    with soundfile.SoundFile(source) as file:
        frames = -1 if longest_s is None else int(longest_s * file.samplerate)
        return at_our_rate(file.read(frames, dtype="float32"), file.samplerate)


def sounding(samples):
    """Without the silence at both ends."""
    loud = np.flatnonzero(np.abs(samples) > 0.02 * np.max(np.abs(samples)))
    return samples[loud[0] : loud[-1] + 1] if len(loud) else samples


def catalogue(path, number):
    data = path.read_bytes()
    offset, length = struct.unpack_from("<II", data, 8 * number)
    offset &= 0x7FFFFFFF
    start = data.index(b"RIFF", offset)
    return sounding(read(io.BytesIO(data[start : start + length])))


def one(folder, name):
    found = sorted(Path(folder).rglob(name))
    if not found:
        raise SystemExit(f"{name} is not under {folder}; unpack the packages that SOURCES.md names.")
    return found[0]


def pack(folder, name):
    """The recordings of one training pack, with what is noted of each."""
    notes = json.loads((Path(folder) / f"{name}.json").read_text())
    samples, rate_hz = soundfile.read(Path(folder) / f"{name}.opus", dtype="float32")
    samples = at_our_rate(samples, rate_hz)
    ends = np.cumsum(notes["lens"])
    return [samples[end - length : end] for end, length in zip(ends, notes["lens"])]


def speech_train(packs):
    names = ["data_an4_0", "data_an4_1", "data_sti_0", "data_ww_0", "data_ww_2", "data_cheap1_0"]
    names += sorted(path.stem for path in Path(packs).glob("kok1_*.json"))[::2]
    return [one for name in names for one in pack(packs, name)]


def recorded_train(packs, unpacked):
    sounds = one(unpacked, "opensfx.cat")
    made = {kind: [catalogue(sounds, n) for n in numbers] for kind, numbers in OPENSFX_TRAIN.items()}
    made["blow"] = pack(packs, "data_impacts_0")[:KENNEY_TRAIN]
    made["musicOrRadio"] = [read(one(unpacked, f"{name}.wav"), MUSIC_PART_S) for name in MUSIC_TRAIN]
    made["speech"] = speech_train(packs)
    return made


def held_out(packs, dev, unpacked):
    """Kind, name and sounds of each source that trains nothing. `blow`: single blows, to be struck in any rhythm."""
    sounds = one(unpacked, "opensfx.cat")

    def listed(*numbers):
        return [catalogue(sounds, number) for number in numbers]

    flight = one(unpacked, "helicopter_engine_inside.wav").parent
    with zipfile.ZipFile(one(unpacked, "data.zip")) as rally:
        engine = next(name for name in rally.namelist() if name.endswith("sounds/engine.wav"))
        car = read(io.BytesIO(rally.read(engine)))
    digits = pack(packs, "data_fsdd_0")
    real = [read(path) for path in sorted((Path(dev) / "clean").glob("*.flac"))]
    return (
        ("speech", "real people (dev)", real),
        ("speech", "digits, 8 kHz", [np.concatenate(digits[at : at + 4]) for at in range(0, 400, 4)]),
        ("impactTool", "recorded blows, CC0", [], pack(packs, "data_impacts_0")[KENNEY_TRAIN:]),
        ("grinderOrSaw", "circular saw", listed(40)),
        ("engineOrCompressor", "old bus", listed(28)),
        ("engineOrCompressor", "propeller", listed(8)),
        ("engineOrCompressor", "rally car", [car]),
        ("engineOrCompressor", "aircraft", [sounding(read(p)) for p in sorted(flight.glob("*engine_*side*.wav"))]),
        ("alarm", "beep", listed(21)),
        ("musicOrRadio", "hold music", [read(one(unpacked, f"{name}.wav"), MUSIC_PART_S) for name in MUSIC_HELD_OUT]),
        ("musicOrRadio", "game music", [read(one(unpacked, f"{name}.ogg"), MUSIC_PART_S) for name in MUSIC_HELD_OUT_GAME]),
    )
