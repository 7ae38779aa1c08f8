"""Writes the graph folder: HCLr.fst and Gr.fst for composition at run time, words.txt and the tables beside them.

Debian's `fstconvert` writes the look-ahead form and a new numbering of the words, which goes over the language model
and words.txt as well.
"""

import os
import subprocess
import tempfile

LIBRARIES = "/usr/lib/x86_64-linux-gnu/fst/22"  # where Debian keeps OpenFst's look-ahead form


def run(*command):
    libraries = f"{LIBRARIES}:{os.environ.get('LD_LIBRARY_PATH', '')}"
    subprocess.run(command, check=True, env={**os.environ, "LD_LIBRARY_PATH": libraries})


def write_text(arcs, finals, path):
    """OpenFst's text form; the start comes first."""
    with open(path, "w") as file:
        for source, label, word, cost, target in sorted(arcs, key=lambda arc: (arc[0] != 0, arc[0])):
            file.write(f"{source} {target} {label} {word} {cost:.6g}\n")
        for state, cost in finals.items():
            file.write(f"{state} {cost:.6g}\n")


def write_transducers(out, graph, language):
    """Returns the new numbering of words."""
    with tempfile.TemporaryDirectory() as tmp:
        write_text(*graph, f"{tmp}/hcl.txt")
        write_text(*language, f"{tmp}/g.txt")
        run("fstcompile", f"{tmp}/hcl.txt", f"{tmp}/hcl0.fst")
        run("fstconnect", f"{tmp}/hcl0.fst", f"{tmp}/hcl1.fst")
        run("fstarcsort", "--sort_type=olabel", f"{tmp}/hcl1.fst", f"{tmp}/hcl.fst")
        ahead = ["--fst_type=olabel_lookahead", f"--save_relabel_opairs={tmp}/relabel"]
        run("fstconvert", *ahead, f"{tmp}/hcl.fst", f"{out}/HCLr.fst")
        run("fstcompile", f"{tmp}/g.txt", f"{tmp}/g0.fst")
        relabel = [f"--relabel_ipairs={tmp}/relabel", f"--relabel_opairs={tmp}/relabel"]
        run("fstrelabel", *relabel, f"{tmp}/g0.fst", f"{tmp}/g1.fst")
        run("fstarcsort", "--sort_type=ilabel", f"{tmp}/g1.fst", f"{tmp}/g2.fst")
        run("fstconvert", "--fst_type=const", f"{tmp}/g2.fst", f"{out}/Gr.fst")
        with open(f"{tmp}/relabel") as file:
            return dict(map(int, line.split()) for line in file)


def write(out, graph, language, word_id, phones):
    """`graph`, `language`: (arcs, finals). Returns the words without a path in the graph, which must not be used."""
    os.makedirs(f"{out}/phones", exist_ok=True)
    new = write_transducers(out, graph, language)
    lost = [word for word, number in word_id.items() if number not in new]
    after = max(new.values()) + 1
    numbers = {word: new[number] for word, number in word_id.items() if number in new}
    numbers |= {word: after + place for place, word in enumerate(lost)}
    files = {
        "words.txt": "<eps> 0\n"
        + "".join(f"{word} {n}\n" for word, n in sorted(numbers.items(), key=lambda one: one[1])),
        # Vosk wants the file and something in it; the graph has no such symbols.
        "disambig_tid.int": f"{len(phones.transition) + 1}\n",
        "phones/word_boundary.int": phones.word_boundary(),
        "phones.txt": phones.table(),
    }
    for name, text in files.items():
        with open(f"{out}/{name}", "w") as file:
            file.write(text)
    return lost
