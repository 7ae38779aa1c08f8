"""The features that Kaldi computes: 40 MFCCs of 25 ms windows every 10 ms, 20 to 7600 Hz."""

import numpy as np
import torch
from torch import nn

RATE_HZ = 16000
BANDS = 40
FFT = 512


def mel(hertz):
    return 1127.0 * np.log(1 + hertz / 700.0)


def mel_bank(warp=1.0):
    """Triangular filters [257, 40]; `warp` stretches the frequencies, as a longer or shorter throat does."""
    nyquist = RATE_HZ / 2
    hertz = np.arange(FFT // 2) * RATE_HZ / FFT
    if warp != 1.0:
        knee = 4800.0 / max(1.0, warp)
        above = knee * warp + (hertz - knee) * (nyquist - knee * warp) / (nyquist - knee)
        hertz = np.where(hertz < knee, hertz * warp, above)
    edges = np.linspace(mel(20.0), mel(7600.0), BANDS + 2)
    bank = np.zeros((FFT // 2 + 1, BANDS))
    for band in range(BANDS):
        low, middle, high = edges[band : band + 3]
        rise, fall = (mel(hertz) - low) / (middle - low), (high - mel(hertz)) / (high - middle)
        bank[: FFT // 2, band] = np.clip(np.minimum(rise, fall), 0, None)
    return bank.astype(np.float32)


class Mfcc(nn.Module):
    """Sound in 16-bit units [B, samples] to features [B, frames, 40]."""

    def __init__(self, warps=(1.0,)):
        super().__init__()
        n = np.arange(400)
        povey = (0.5 - 0.5 * np.cos(2 * np.pi * n / 399)) ** 0.85
        k, j = np.arange(BANDS)[:, None], np.arange(BANDS)[None]
        dct = np.sqrt(2 / BANDS) * np.cos(np.pi / BANDS * (j + 0.5) * k)
        dct[0] = np.sqrt(1 / BANDS)
        lifter = 1 + 0.5 * 22 * np.sin(np.pi * np.arange(BANDS) / 22)
        self.register_buffer("window", torch.tensor(povey, dtype=torch.float32))
        self.register_buffer("banks", torch.tensor(np.stack([mel_bank(w) for w in warps])))
        self.register_buffer("dct", torch.tensor((dct * lifter[:, None]).T.astype(np.float32)))

    def forward(self, sound, warp=None, mask=None):
        """`warp`: the filter bank to take for each sound; `mask`: applied to the logarithmic mel bands."""
        frames = sound.unfold(1, 400, 160)
        frames = frames - frames.mean(-1, keepdim=True)
        frames = frames - 0.97 * torch.cat([frames[..., :1], frames[..., :-1]], -1)
        power = torch.fft.rfft(frames * self.window, FFT).abs().square()
        bands = power @ self.banks[0] if warp is None else torch.bmm(power, self.banks[warp])
        bands = bands.clamp_min(1.1920929e-07).log()
        return (bands if mask is None else mask(bands)) @ self.dct
