"""Windows of sound as a microphone in a bay gives them: one source or two, in a room, at some level, with background."""

import numpy as np
from scipy.signal import fftconvolve

from kinds import KINDS, RATE_HZ, WINDOW_SAMPLES
from synthesis import MADE, blows, room

# A source counts in a window when it is not below the louder one by more than this.
HEARD_DB = 14


def rms(samples):
    return float(np.sqrt(np.mean(np.square(samples)) + 1e-14))


def scaled(samples, level_db):
    return samples * (10 ** (level_db / 20) / rms(samples))


def in_room(random, samples):
    """A response of scattered echoes that dies away."""
    if random.random() < 0.35:
        return samples
    length = int(RATE_HZ * random.uniform(0.1, 0.9))
    at = np.arange(length) / RATE_HZ
    response = random.standard_normal(length) * np.exp(-at * 6.9 / (length / RATE_HZ))
    response *= random.uniform(0.05, 0.35) / np.sqrt(np.sum(response**2))
    response[0] += 1
    return fftconvolve(samples, response)[: len(samples)]


def coloured(random, samples):
    """What microphone and distance do: a gentle tilt, sometimes a narrow band."""
    spectrum = np.fft.rfft(samples)
    hertz = np.fft.rfftfreq(len(samples), 1 / RATE_HZ)
    bends = np.interp(np.log10(np.maximum(hertz, 60)), np.linspace(1.8, 3.9, 5), random.uniform(-9, 9, 5))
    if random.random() < 0.25:
        # A cheap microphone, or a recording made for telephones.
        top = random.uniform(3000, 7000)
        bends = bends - 60 * np.clip((hertz - top) / 400, 0, 1)
    return np.fft.irfft(spectrum * 10 ** (bends / 20), len(samples))


def excerpt(random, samples, length):
    if len(samples) < length:
        samples = np.tile(samples, int(np.ceil(length / len(samples))) + 1)
    at = random.integers(0, len(samples) - length + 1)
    return samples[at : at + length]


def frame_levels(samples):
    return np.std(samples[: len(samples) // 400 * 400].reshape(-1, 400), 1)


def evened(samples):
    """As loud as any other clip, by its loud frames."""
    return samples * (0.1 / (np.percentile(frame_levels(samples), 95) + 1e-6)) if len(samples) >= 400 else samples


class Bench:
    """Draws sources: made ones and, where there are any, recorded ones."""

    def __init__(self, random, recorded, made_share=0.6, blow_share=0.35):
        self.random, self.recorded = random, recorded
        self.made_share, self.blow_share = made_share, blow_share

    def source(self, kind):
        random, samples = self.random, WINDOW_SAMPLES
        recorded = self.recorded.get(kind, [])
        if kind == "speech":
            return self.speech()
        if kind == "impactTool" and self.recorded.get("blow") and random.random() < self.blow_share:
            sounds = [self.recorded["blow"][random.integers(len(self.recorded["blow"]))] for _ in range(3)]
            per_s = float(np.exp(random.uniform(np.log(2), np.log(30))))
            return blows(random, samples, per_s, lambda: sounds[random.integers(3)], 0.12)
        if recorded and (kind not in MADE or random.random() > self.made_share):
            sound = recorded[random.integers(len(recorded))]
            return self.bent(excerpt(random, sound, 2 * samples))[:samples]
        if kind not in MADE:
            raise ValueError(f"nothing to draw {kind} from")
        makers = MADE[kind]
        return makers[random.integers(len(makers))](random, samples)

    def bent(self, samples):
        """A little faster or slower, as another machine of the same sort would be."""
        speed = self.random.uniform(0.85, 1.18)
        at = np.arange(0, len(samples) - 1, speed)
        return np.pad(np.interp(at, np.arange(len(samples)), samples), (0, len(samples)))

    def speech(self):
        """A window that is spoken in for at least a quarter of its time: near the clip's own loud frames, not its noise."""
        sounds = self.recorded["speech"]
        for _ in range(30):
            made = np.concatenate([evened(sounds[self.random.integers(len(sounds))]) for _ in range(2)])
            window = self.bent(excerpt(self.random, made, 2 * WINDOW_SAMPLES))[:WINDOW_SAMPLES]
            loud = frame_levels(window) > 0.25 * np.percentile(frame_levels(made), 95)
            if np.mean(loud) > 0.25:
                return window
        return window

    def window(self, kind, second=None, over_db=0.0, level_db=None):
        """Samples and the kinds heard in them. `second` lies `over_db` below the first."""
        random = self.random
        if kind == "quiet":
            level = random.uniform(-85, -44) if level_db is None else level_db
            return scaled(coloured(random, room(random, WINDOW_SAMPLES)), level), {"quiet"}
        level = random.uniform(-48, -9) if level_db is None else level_db
        made = scaled(in_room(random, coloured(random, self.source(kind))), level)
        heard = {kind}
        if second is not None:
            other = scaled(in_room(random, coloured(random, self.source(second))), level - over_db)
            made = made + other
            if over_db < HEARD_DB:
                heard.add(second)
            if over_db < -HEARD_DB:
                heard.discard(kind)
        made = made + scaled(room(random, WINDOW_SAMPLES), level - random.uniform(12, 45))
        return np.clip(made, -1, 1), heard

    def any_window(self):
        random = self.random
        kind = KINDS[random.choice(len(KINDS), p=[0.24, 0.18, 0.13, 0.13, 0.11, 0.11, 0.1])]
        if kind == "quiet" or random.random() < 0.55:
            return self.window(kind)
        others = [one for one in KINDS if one not in (kind, "quiet")]
        second = "speech" if kind != "speech" and random.random() < 0.5 else others[random.integers(len(others))]
        return self.window(kind, second, random.uniform(-20, 20))

    def part_spoken(self):
        """Speech or a tool that only begins or ends within the window."""
        samples, heard = self.any_window()
        cut = int(self.random.uniform(0.25, 0.5) * WINDOW_SAMPLES)
        quiet = scaled(room(self.random, cut), self.random.uniform(-80, -52))
        kept = samples[: WINDOW_SAMPLES - cut]
        return (np.concatenate([quiet, kept]) if self.random.random() < 0.5 else np.concatenate([kept, quiet])), heard

    def batch(self, count):
        windows = np.zeros((count, WINDOW_SAMPLES), np.float32)
        targets = np.zeros((count, len(KINDS)), np.float32)
        for at in range(count):
            samples, heard = self.part_spoken() if self.random.random() < 0.15 else self.any_window()
            windows[at] = samples
            for kind in heard:
                targets[at, KINDS.index(kind)] = 1
        return windows, targets
