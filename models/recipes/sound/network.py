"""The classifier: log-mel energies from plain convolutions with fixed kernels, then a few separable convolutions."""

import keras
import numpy as np

from kinds import KINDS, RATE_HZ, WINDOW_SAMPLES

FRAME, HOP, BANDS = 256, 240, 40
FLOOR = 1e-9


def fourier_kernels():
    """Cosine and sine of each bin under a Hann window, as kernels of a convolution."""
    at = np.arange(FRAME)
    window = np.hanning(FRAME + 1)[:-1] / (FRAME / 2)
    angle = 2 * np.pi * np.outer(at, np.arange(FRAME // 2 + 1)) / FRAME
    kernels = np.stack([window[:, None] * np.cos(angle), window[:, None] * np.sin(angle)])
    return kernels[:, :, None, :].astype(np.float32)


def mel_bands():
    """Triangles on the mel scale (2595 log10(1 + f/700), O'Shaughnessy 1987), 60 Hz to 7.8 kHz."""
    def mel(hertz):
        return 2595 * np.log10(1 + hertz / 700)

    edges = 700 * (10 ** (np.linspace(mel(60), mel(7800), BANDS + 2) / 2595) - 1)
    hertz = np.arange(FRAME // 2 + 1) * RATE_HZ / FRAME
    bands = np.zeros((len(hertz), BANDS), np.float32)
    for band in range(BANDS):
        low, mid, high = edges[band : band + 3]
        # Low bands are narrower than a bin: each reaches at least the next one.
        width = max(mid - low, high - mid, RATE_HZ / FRAME)
        bands[:, band] = np.maximum(0, 1 - np.abs(hertz - mid) / width)
    return bands[None]


def fixed(kernel, filters, size, stride, name):
    layer = keras.layers.Conv1D(filters, size, strides=stride, use_bias=False, trainable=False, name=name)

    def fill():
        layer.set_weights([kernel])

    return layer, fill


def front_end(sound):
    """[batch, samples] to [batch, frames, bands], about within ±2."""
    cosine, sine = fourier_kernels()
    bins = FRAME // 2 + 1
    real, fill_real = fixed(cosine, bins, FRAME, HOP, "cosine")
    imaginary, fill_imaginary = fixed(sine, bins, FRAME, HOP, "sine")
    mel, fill_mel = fixed(mel_bands(), BANDS, 1, 1, "mel")
    column = keras.layers.Reshape((WINDOW_SAMPLES, 1))(sound)
    power = keras.layers.Add()([
        keras.layers.Lambda(keras.ops.square)(real(column)),
        keras.layers.Lambda(keras.ops.square)(imaginary(column)),
    ])
    energy = mel(power)
    for fill in (fill_real, fill_imaginary, fill_mel):
        fill()
    return keras.layers.Lambda(lambda one: (keras.ops.log(one + FLOOR) + 12) / 5, name="log")(energy)


def body(features):
    made = keras.layers.Reshape((*features.shape[1:], 1))(features)
    made = keras.layers.Conv2D(16, 3, strides=2, padding="same", use_bias=False)(made)
    made = keras.layers.BatchNormalization()(made)
    made = keras.layers.ReLU()(made)
    for filters, stride in ((24, 1), (32, 2), (48, 1), (72, 2), (112, 1)):
        made = keras.layers.SeparableConv2D(filters, 3, strides=stride, padding="same", use_bias=False)(made)
        made = keras.layers.BatchNormalization()(made)
        made = keras.layers.ReLU()(made)
    mean = keras.layers.GlobalAveragePooling2D()(made)
    most = keras.layers.GlobalMaxPooling2D()(made)
    made = keras.layers.Concatenate()([mean, most])
    made = keras.layers.Dropout(0.3)(made)
    return keras.layers.Dense(len(KINDS), activation="sigmoid", name="kinds")(made)


def networks():
    """The part that never learns, the part that does, and both as one."""
    sound = keras.Input((WINDOW_SAMPLES,), name="sound")
    front = keras.Model(sound, front_end(sound))
    features = keras.Input(front.output.shape[1:])
    learns = keras.Model(features, body(features))
    whole = keras.Model(sound, learns(front(sound)))
    return front, learns, whole
