"""Word errors of a recogniser over a folder of recordings with an index.tsv (file, say, ...), by set and level.

    python evaluate.py --dir DEV --model MODEL --grammar GRAMMAR.json [--sets fsddstr,ps] [--every 2] [--out heard.json]
    python evaluate.py --dir DEV --pocketsphinx --grammar GRAMMAR.json

`MODEL`: an unpacked Vosk model. `GRAMMAR.json`: a list of phrases, as the app gives it to its recogniser. The folder of
a file is its level, its name up to the first underscore its set. Only recordings whose words are all in the grammar
count; of the others it is counted how many gave some word (talk that was heard as something). Each recording is heard
in its own noise: half a second before and one and a half after it at the level of its quietest tenth.
"""

import argparse
import json
import math
from collections import Counter, defaultdict
from multiprocessing import Pool

import numpy as np
import soundfile as sf

from acoustic.edits import edits

RATE_HZ = 16000
UNKNOWN = "[unk]"
COLUMNS = ["recordings", "right", "with unk", "words", "word errors"]


def padded(path):
    """16-bit sound at 16 kHz with background noise around it."""
    sound, rate = sf.read(path, dtype="float32")
    if rate != RATE_HZ:
        raise SystemExit(f"{path}: {rate} Hz, not {RATE_HZ}")
    power = np.sort([np.mean(piece**2) for piece in np.array_split(sound, max(1, len(sound) // 320))])
    size = math.sqrt(3 * power[len(power) // 10])
    draw = np.random.default_rng(len(sound))
    before, after = ((draw.random(n) * 2 - 1) * size for n in (RATE_HZ // 2, RATE_HZ * 3 // 2))
    whole = np.concatenate([before, sound, after])
    return (np.clip(whole, -1, 1) * 32767).astype("int16").tobytes()


class VoskWords:
    def __init__(self, model, grammar):
        import vosk

        vosk.SetLogLevel(-1)
        self.new = lambda: vosk.KaldiRecognizer(self.model, RATE_HZ, json.dumps(grammar))
        self.model = vosk.Model(model)

    def words(self, sound):
        """[(word, confidence)] of all the pieces into which the recogniser cut the sound."""
        recogniser, heard = self.new(), []
        recogniser.SetWords(True)
        for at in range(0, len(sound), 3200):
            if recogniser.AcceptWaveform(sound[at : at + 3200]):
                heard += json.loads(recogniser.Result()).get("result", [])
        heard += json.loads(recogniser.FinalResult()).get("result", [])
        return [(word["word"], word["conf"]) for word in heard]


class PocketSphinxWords:
    """The US English model that comes with the package, with the words of the grammar in any order. Give it few words,
    such as the digits: with all of the app's it did not finish four recordings in a minute."""

    def __init__(self, grammar):
        from pocketsphinx import Decoder

        self.decoder = Decoder(samprate=RATE_HZ, loglevel="FATAL", lm=None)
        words = dict.fromkeys(word for phrase in grammar for word in phrase.split() if word != UNKNOWN)
        rule = " | ".join(word for word in words if self.decoder.lookup_word(word))
        self.decoder.add_jsgf_string("app", f"#JSGF V1.0;\ngrammar app;\npublic <said> = ( {rule} )+ ;\n")
        self.decoder.activate_search("app")

    def words(self, sound):
        self.decoder.start_utt()
        self.decoder.process_raw(sound, full_utt=True)
        self.decoder.end_utt()
        best = self.decoder.hyp()
        return [(word, 1.0) for word in (best.hypstr.split() if best else [])]


def recordings(folder, sets, every):
    with open(f"{folder}/index.tsv") as file:
        rows = [line.rstrip("\n").split("\t") for line in file][1:]
    chosen = [(file, say.split()) for file, say, *_ in rows if not sets or set_of(file) in sets]
    return chosen[::every]


def set_of(file):
    return file.split("/")[-1].split("_")[0]


def level_of(file):
    return file.split("/")[0] if "/" in file else "all"


RECOGNISER = None


def start(options, grammar):
    global RECOGNISER
    RECOGNISER = PocketSphinxWords(grammar) if options.pocketsphinx else VoskWords(options.model, grammar)


def hear(path):
    return RECOGNISER.words(padded(path))


def counts(rows, heard, known):
    """Counts by (level, set), and of recordings outside the grammar by level."""
    table, talk = defaultdict(Counter), defaultdict(Counter)
    for (file, say), words in zip(rows, heard):
        said = [word for word, _ in words if word != UNKNOWN]
        if not set(say) <= known:
            talk[level_of(file)].update(recordings=1, heard=bool(said))
            continue
        wrong = edits(said, say)
        row = dict(zip(COLUMNS, (1, wrong == 0, len(said) < len(words), len(say), wrong)))
        for key in ((level_of(file), set_of(file)), (level_of(file), "all")):
            table[key].update(row)
    return table, talk


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--dir", required=True)
    parser.add_argument("--grammar", required=True)
    recogniser = parser.add_mutually_exclusive_group(required=True)
    recogniser.add_argument("--model")
    recogniser.add_argument("--pocketsphinx", action="store_true")
    parser.add_argument("--sets", default="", help="names of sets, with commas between; all if not given")
    parser.add_argument("--every", type=int, default=1, help="take every so many recordings")
    parser.add_argument("--processes", type=int, default=1)
    parser.add_argument("--out", help="what was heard, as JSON")
    options = parser.parse_args()
    with open(options.grammar) as file:
        grammar = json.load(file)
    rows = recordings(options.dir, [name for name in options.sets.split(",") if name], options.every)
    with Pool(options.processes, start, (options, grammar)) as pool:
        heard = pool.map(hear, [f"{options.dir}/{file}" for file, _ in rows], chunksize=4)
    table, talk = counts(rows, heard, {word for phrase in grammar for word in phrase.split()})
    print("| level | set | " + " | ".join(COLUMNS) + " |\n" + "| --- " * (len(COLUMNS) + 2) + "|")
    for (level, name), row in sorted(table.items()):
        print(f"| {level} | {name} | " + " | ".join(str(int(row[column])) for column in COLUMNS) + " |")
    for level, row in sorted(talk.items()):
        print(f"{level}: {int(row['heard'])} of {row['recordings']} recordings outside the grammar gave some word")
    if options.out:
        with open(options.out, "w") as file:
            json.dump({name: words for (name, _), words in zip(rows, heard)}, file)


if __name__ == "__main__":
    main()
