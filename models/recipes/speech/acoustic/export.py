"""Stored weights to the arrays and the description that vosk_model reads. Needs numpy only.

    python -m acoustic.export mean.pt OUT [--context narrow]
"""

import argparse
import io
import json
import os
import pickle
import zipfile
from collections import OrderedDict

import numpy as np

from .contexts import CONTEXTS
from .phones import PHONES

TYPES = {"FloatStorage": np.float32, "LongStorage": np.int64, "HalfStorage": np.float16}


def rebuilt(storage, offset, size, stride, *_):
    steps = [step * storage.itemsize for step in stride]
    return np.lib.stride_tricks.as_strided(storage[offset:], size, steps).copy()


class Reader(pickle.Unpickler):
    """Reads the tensors of a stored state dictionary, and refuses everything else."""

    def __init__(self, archive):
        self.archive, self.root = archive, archive.namelist()[0].split("/")[0]
        super().__init__(io.BytesIO(archive.read(f"{self.root}/data.pkl")))

    def find_class(self, module, name):
        known = {"_rebuild_tensor_v2": rebuilt, "OrderedDict": OrderedDict}
        if name in known:
            return known[name]
        if name in TYPES:
            return name
        raise pickle.UnpicklingError(f"{module}.{name} is not expected in weights")

    def persistent_load(self, saved):
        return np.frombuffer(self.archive.read(f"{self.root}/data/{saved[2]}"), TYPES[saved[1]])


def layers(context):
    """(name, stored name, offsets, whether ReLU, batch norm, layer that is added)."""
    rows = [("lda", "lda", [-1, 0, 1], False, None, None), ("tdnn1", "t1", [0], True, "bn1", None)]
    before = "tdnn1"
    for number, (left, right) in enumerate(context):
        name = f"tdnnf{number + 2}"
        rows.append((f"{name}l", f"lins.{number}", [-left, 0] if left else [0], False, None, None))
        rows.append((name, f"affs.{number}", [0, right] if right else [0], True, f"bns.{number}", before))
        before = name
    return [
        *rows,
        ("prefinall", "pre", [0], False, None, None),
        ("prefinal", "paff", [0], True, "pbn", None),
        ("prefinal2", "plin", [0], False, "pbn2", None),
        ("output", "out", [0], False, None, None),
    ]


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("weights")
    parser.add_argument("out")
    parser.add_argument("--context", choices=sorted(CONTEXTS), default="narrow")
    options = parser.parse_args()
    context = CONTEXTS[options.context]
    with zipfile.ZipFile(options.weights) as archive:
        state = {name: value.astype(np.float32) for name, value in Reader(archive).load().items()}
    arrays, described = {}, []
    for name, stored, offsets, relu, norm, added in layers(context):
        weight = state[f"{stored}.lin.weight"]
        arrays[f"{name}.W"] = weight
        arrays[f"{name}.b"] = state.get(f"{stored}.lin.bias", np.zeros(len(weight), np.float32))
        layer = {"name": name, "offsets": offsets, "relu": relu, "bn": norm is not None, "residual_from": added}
        if added:
            layer["residual_scale"] = 0.66
        if norm:
            arrays[f"{name}.bn_mean"], arrays[f"{name}.bn_var"] = state[f"{norm}.mean"], state[f"{norm}.var"]
            layer["bn_eps"] = 1e-3
        described.append(layer)
    os.makedirs(options.out, exist_ok=True)
    np.savez(f"{options.out}/weights.npz", **arrays)
    outputs = len(state["out.lin.weight"])
    with open(f"{options.out}/arch.json", "w") as file:
        json.dump({"input_dim": 40, "num_pdfs": outputs, "layers": described}, file, indent=1)
    with open(f"{options.out}/phones.txt", "w") as file:
        file.writelines(f"{phone}\n" for phone in PHONES)


if __name__ == "__main__":
    main()
