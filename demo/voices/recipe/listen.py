"""Lets the recogniser hear recordings, to choose takes.

usage: listen.py MODEL_DIR VOICES_DIR LINES.tsv GRAMMARS.json

GRAMMARS maps each file to the words that may be said when it is played, or to null for the open vocabulary.
Prints one line a recording: right or wrong, file, said, heard, least confidence; then the rate by folder.
"""

import csv
import json
import pathlib
import sys
from collections import Counter

import numpy as np
import soundfile
import vosk

RATE = 16_000
# Words that sound alike are one word to a recogniser.
ALIKE = {"to": "two", "for": "four"}


def alike(text: str) -> str:
    return " ".join(ALIKE.get(word, word) for word in text.split())


def hear(model: vosk.Model, grammar: list[str] | None, samples: np.ndarray) -> tuple[str, float]:
    recogniser = (
        vosk.KaldiRecognizer(model, RATE, json.dumps(sorted({alike(words) for words in grammar}))) if grammar else vosk.KaldiRecognizer(model, RATE)
    )
    recogniser.SetWords(True)
    # A quiet room around it, as the microphone has it.
    room = np.random.default_rng(7).normal(0, 12, len(samples) + RATE).astype(np.int16)
    room[RATE // 2 : RATE // 2 + len(samples)] += samples
    recogniser.AcceptWaveform(room.tobytes())
    result = json.loads(recogniser.FinalResult())
    words = [word for word in result.get("result", []) if word["word"] != "[unk]"]
    return " ".join(word["word"] for word in words), min((word["conf"] for word in words), default=0.0)


def main() -> None:
    model_dir, folder, lines, grammars = sys.argv[1:5]
    vosk.SetLogLevel(-1)
    model = vosk.Model(model_dir)
    allowed = json.loads(pathlib.Path(grammars).read_text(encoding="utf-8"))
    right, all_ = Counter(), Counter()
    with open(lines, encoding="utf-8", newline="") as file:
        for row in csv.DictReader(file, delimiter="\t", quoting=csv.QUOTE_NONE):
            path = pathlib.Path(folder) / row["file"]
            if not row["file"] or not path.exists():
                continue
            samples, _ = soundfile.read(path, dtype="int16")
            text, confidence = hear(model, allowed[row["file"]], samples)
            same = alike(text) == alike(row["say"])
            print("right" if same else "WRONG", row["file"], row["say"], text, f"{confidence:.2f}", sep="\t")
            voice = row["file"].split("/")[0]
            all_[voice] += 1
            right[voice] += same
    for voice in sorted(all_):
        print(f"{voice}: {right[voice]} of {all_[voice]}")


if __name__ == "__main__":
    main()
