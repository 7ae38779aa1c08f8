"""What happens to a voice on its way to the kiosk, on the GPU: pace, microphone, room, noise, level, distortion."""

import math

import numpy as np
import torch
import torch.nn.functional as F

from .features import Mfcc

WARPS = np.concatenate([[1.0], np.linspace(0.84, 1.18, 16)])
ROOM = 6400
# Lengths whose Fourier transforms are fast: no prime factor above 5.
FAST = sorted(1600 * 2**a * 3**b * 5**c for a in range(9) for b in range(6) for c in range(4))


class Augmenter:
    def __init__(self, noises, device, snr_db=(-2.0, 26.0), noisy=0.65, reverberant=0.6):
        self.noises, self.device = noises, device
        self.snr_db, self.noisy, self.reverberant = snr_db, noisy, reverberant
        self.mfcc = Mfcc(WARPS).to(device)

    def between(self, count, low, high):
        return torch.rand(count, device=self.device) * (high - low) + low

    def some(self, count, share):
        return (torch.rand(count, 1, device=self.device) < share).float()

    def pace(self, x):
        """Speed and pitch by 0.85 to 1.17, by cubic interpolation. The result is longer, for slower speech."""
        count, length = x.shape
        speed = torch.where(
            torch.rand(count, device=self.device) < 0.7,
            self.between(count, 0.85, 1.17),
            torch.ones(count, device=self.device),
        )
        place = torch.arange(int(length * 1.12), device=self.device)[None] * speed[:, None]
        whole = place.floor().long()
        f = (place - whole).float()
        padded = F.pad(x, (1, 3))
        last = padded.shape[1] - 1

        def at(step):
            index = whole + 1 + step
            return padded.gather(1, index.clamp(0, last)) * (index <= last)

        a, b, c, d = at(-1), at(0), at(1), at(2)
        return b + 0.5 * f * (c - a + f * (2 * a - 5 * b + 4 * c - d + f * (3 * (b - c) + d - a)))

    def microphone(self, hertz, count):
        """A random frequency response; some are those of a telephone, or without the lows."""
        points = torch.randn(count, 9, device=self.device) * 3.5 * self.some(count, 0.8)
        curve = F.interpolate(points[:, None], hertz.shape[1], mode="linear", align_corners=True)[:, 0]
        tilt = self.between(count, -6, 6)[:, None] * (hertz / 8000 - 0.5) * 2
        response = 10 ** ((curve + tilt) / 20)
        telephone, highpass = self.some(count, 0.18), self.some(count, 0.5)
        low = self.between(count, 60, 350)[:, None]
        high = self.between(count, 3000, 4500)[:, None]
        response = response * (1 - telephone + telephone * torch.sigmoid((high - hertz) / 80))
        return response * (1 - highpass + highpass * torch.sigmoid((hertz - low) / 30))

    def room(self, count):
        """Impulse responses: the direct sound, then a decay of 0.08 to 0.75 s."""
        t = torch.arange(ROOM, device=self.device)[None] / 16000.0
        decay = torch.exp(-6.9 * t / self.between(count, 0.08, 0.75)[:, None])
        late = torch.randn(count, ROOM, device=self.device) * decay
        late = late * (t > self.between(count, 0.001, 0.012)[:, None])
        late = late / (late.square().sum(1, keepdim=True).sqrt() + 1e-6)
        direct_db = self.between(count, -3, 15)
        late = late * (10 ** (-direct_db / 20))[:, None] * self.some(count, self.reverberant)
        late[:, 0] += 1
        return late

    def noise(self, count, length):
        row = torch.randint(0, self.noises.shape[0], (count,), device=self.device)
        start = torch.randint(0, self.noises.shape[1], (count,), device=self.device)
        place = (start[:, None] + torch.arange(length, device=self.device)[None]) % self.noises.shape[1]
        return self.noises[row[:, None], place].float()

    def heard(self, x):
        """What the microphone of the kiosk makes of a voice."""
        count, length = x.shape
        spoken = x.abs() > x.abs().amax(1, keepdim=True) * 0.05
        n = next(fast for fast in FAST if fast >= length + ROOM)
        spectrum = torch.fft.rfft(x, n)
        hertz = torch.linspace(0, 8000, spectrum.shape[1], device=self.device)[None]
        spectrum = spectrum * self.microphone(hertz, count) * torch.fft.rfft(self.room(count), n)
        x = torch.fft.irfft(spectrum, n)[:, :length]
        power = (x.square() * spoken).sum(1) / spoken.sum(1).clamp_min(1)
        second = self.some(count, 0.3) * self.between(count, 0.3, 1)[:, None]
        noise = self.noise(count, length)
        noise = noise + second * self.noise(count, length)
        noise = noise / noise.square().mean(1, keepdim=True).sqrt().clamp_min(1e-6)
        gain = power.sqrt() * 10 ** (-self.between(count, *self.snr_db) / 20)
        x = x + noise * gain[:, None] * self.some(count, self.noisy)
        return self.recorded(x)

    def recorded(self, x):
        """Level, clipping, the noise of the converter, and for some the companding of a telephone."""
        count = x.shape[0]
        peak = 32767 * 10 ** (self.between(count, -34, -0.5) / 20)
        clipped = torch.rand(count, device=self.device) < 0.06
        peak = torch.where(clipped, 32767 * self.between(count, 1.2, 3.5), peak)
        x = (x * (peak / x.abs().amax(1).clamp_min(1))[:, None]).clamp(-32767, 32767)
        x = x + torch.randn_like(x) * self.between(count, 0, 6)[:, None] * self.some(count, 0.6)
        share = self.some(count, 0.06)
        v = x / 32768
        q = (torch.sign(v) * torch.log1p(255 * v.abs()) / math.log(256) * 127).round() / 127
        companded = torch.sign(q) * (torch.exp(q.abs() * math.log(256)) - 1) / 255 * 32768
        return (x * (1 - share) + companded * share).round()

    def masked(self, bands):
        """Hides up to two stretches of time and of frequency (SpecAugment)."""
        count, frames, wide = bands.shape
        hidden = torch.zeros_like(bands, dtype=torch.bool)
        for _ in range(2):
            for size, longest, axis in ((wide, 7, 1), (frames, 12, 2)):
                span = self.between(count, 0, longest) * (torch.rand(count, device=self.device) < 0.5)
                start = self.between(count, 0, 1) * (size - span)
                k = torch.arange(size, device=self.device)[None]
                inside = (k >= start[:, None]) & (k < (start + span)[:, None])
                hidden |= inside.unsqueeze(axis)
        return torch.where(hidden, bands.mean((1, 2), keepdim=True), bands)

    @torch.no_grad()
    def features(self, x, clean=False):
        """Features of the sound as it is heard, and, if asked for, of the same voice close by, frame for frame."""
        x = self.pace(x.float())
        count = x.shape[0]
        warp = torch.randint(1, len(WARPS), (count,), device=self.device)
        warp = torch.where(torch.rand(count, device=self.device) < 0.75, warp, torch.zeros_like(warp))
        return self.mfccs(self.heard(x), warp, self.masked), self.mfccs(self.close(x), warp) if clean else None

    def close(self, x):
        return x + torch.randn_like(x) * 3

    def mfccs(self, x, warp, mask=None):
        return torch.cat([self.mfcc(sound, which, mask) for sound, which in zip(x.split(128), warp.split(128))])
