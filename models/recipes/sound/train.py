"""Trains the classifier and writes it as TFLite with metadata.

python train.py --packs TRAINING_PACKS --unpacked UNPACKED_PACKAGES --out MODEL.tflite [--windows 24000] [--epochs 24]
"""

import argparse
import time
from pathlib import Path

import keras
import numpy as np
import tensorflow as tf
from tensorflow.python.framework.convert_to_constants import convert_variables_to_constants_v2

from kinds import KINDS, RATE_HZ, WINDOW_SAMPLES
from metadata import with_metadata
from mixing import Bench
from network import networks
from sources import recorded_train

LICENCE = "Own model; sources and their licences are in MODEL.md (among them CC BY 3.0 and CC BY-SA 3.0)"


def features_of(front, bench, count, part=500):
    features, targets = [], []
    for _ in range(0, count, part):
        windows, wanted = bench.batch(part)
        features.append(front.predict(windows, batch_size=64, verbose=0).astype(np.float16))
        targets.append(wanted)
    return np.concatenate(features), np.concatenate(targets)


def bent(features, targets):
    """Each time a little different: another microphone's curve, a missing top, a gap in time or pitch."""
    shape = tf.shape(features)
    count, frames, bands = shape[0], shape[1], shape[2]
    knots = tf.random.normal((count, 6, 1, 1), stddev=0.2)
    curve = tf.image.resize(knots, (bands, 1))[:, :, 0, 0]
    made = features + curve[:, None, :] + tf.random.normal((count, 1, 1), stddev=0.1)

    def gap(length, longest):
        width = tf.random.uniform((count, 1), 0, longest, tf.int32)
        first = tf.random.uniform((count, 1), 0, length, tf.int32)
        at = tf.range(length)[None]
        return (at >= first) & (at < first + width)

    low = tf.reduce_min(made, (1, 2), keepdims=True)
    hidden = gap(frames, 12)[:, :, None] | gap(bands, 8)[:, None, :]
    made = tf.where(hidden, low, made)
    top = tf.random.uniform((count, 1), 26, 60, tf.int32)
    return tf.where((tf.range(bands)[None] >= top)[:, None, :], low, made), targets


def as_tflite(whole, half):
    """Batch of one; weights of two bytes where `half`."""
    call = tf.function(lambda sound: whole(sound, training=False))
    concrete = call.get_concrete_function(tf.TensorSpec((1, WINDOW_SAMPLES), tf.float32))
    # Variables as constants: the runtime in the browser keeps none.
    frozen = convert_variables_to_constants_v2(concrete)
    converter = tf.lite.TFLiteConverter.from_concrete_functions([frozen])
    if half:
        converter.optimizations = [tf.lite.Optimize.DEFAULT]
        converter.target_spec.supported_types = [tf.float16]
    return converter.convert()


def main():
    options = argparse.ArgumentParser()
    options.add_argument("--packs", required=True)
    options.add_argument("--unpacked", required=True)
    options.add_argument("--out", required=True)
    options.add_argument("--windows", type=int, default=24_000)
    options.add_argument("--epochs", type=int, default=24)
    options.add_argument("--seed", type=int, default=1)
    options.add_argument("--full", dest="half", action="store_false", help="weights of four bytes, not two")
    given = options.parse_args()
    tf.config.threading.set_intra_op_parallelism_threads(1)
    keras.utils.set_random_seed(given.seed)
    began = time.time()
    front, learns, whole = networks()
    bench = Bench(np.random.default_rng(given.seed), recorded_train(given.packs, given.unpacked))
    features, targets = features_of(front, bench, given.windows)
    print(f"{len(features)} windows after {time.time() - began:.0f} s", flush=True)
    learns.compile(
        keras.optimizers.Adam(keras.optimizers.schedules.CosineDecay(2e-3, given.epochs * len(features) // 64)),
        keras.losses.BinaryCrossentropy(label_smoothing=0.02),
        metrics=[keras.metrics.BinaryAccuracy()],
    )
    kept = len(features) // 20
    training = (
        tf.data.Dataset.from_tensor_slices((features[kept:].astype(np.float32), targets[kept:]))
        .shuffle(len(features))
        .batch(64)
        .map(bent)
    )
    checked = (features[:kept].astype(np.float32), targets[:kept])
    learns.fit(training, epochs=given.epochs, validation_data=checked, verbose=2)
    model = with_metadata(
        as_tflite(whole, given.half),
        KINDS,
        name="bay sounds",
        description="What a vehicle workshop's bay sounds like, in windows of one second",
        licence=LICENCE,
        rate_hz=RATE_HZ,
    )
    Path(given.out).write_bytes(model)
    print(f"{len(model)} bytes, {learns.count_params()} numbers learnt, {time.time() - began:.0f} s", flush=True)


if __name__ == "__main__":
    main()
