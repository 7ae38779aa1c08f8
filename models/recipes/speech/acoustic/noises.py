"""The noise of a workshop, made by rule: each function gives so many samples at 16 kHz, at any level."""

import numpy as np

RATE_HZ = 16000


def coloured(n, slope, draw):
    """Noise whose power falls as 1 / f ** slope."""
    spectrum = np.fft.rfft(draw.randn(n))
    bins = np.maximum(np.arange(len(spectrum)), 1)
    return np.fft.irfft(spectrum * bins ** (-slope / 2.0), n)


def banded(n, low, high, draw):
    spectrum, hertz = np.fft.rfft(draw.randn(n)), np.fft.rfftfreq(n, 1 / RATE_HZ)
    edges = np.maximum(0, (low - hertz) / 200.0) + np.maximum(0, (hertz - high) / 600.0)
    return np.fft.irfft(spectrum * np.exp(-edges), n)


def background(n, draw):
    return coloured(n, draw.uniform(0, 2), draw)


def engine(n, draw):
    """Drifting harmonics over rumble."""
    drift = 1 + 0.1 * np.cumsum(draw.randn(n // 1600 + 1)).repeat(1600)[:n] / 40
    phase = 2 * np.pi * np.cumsum(draw.uniform(25, 240) * drift) / RATE_HZ
    fall = draw.uniform(0.2, 1)
    tone = sum(
        draw.uniform(0.1, 1) / k**fall * np.sin(k * phase + draw.uniform(0, 6)) for k in range(1, draw.randint(5, 30))
    )
    rumble = coloured(n, draw.uniform(0.5, 1.8), draw)
    return tone + draw.uniform(0.1, 1) * rumble * tone.std() / max(rumble.std(), 1e-6)


def impact_tool(n, draw):
    """Bursts of 9 to 50 blows a second."""
    out, at = 0.01 * draw.randn(n), 0
    while at < n:
        burst, rate, k = int(draw.uniform(0.2, 1.5) * RATE_HZ), draw.uniform(9, 50), at
        decay, hertz, hiss = draw.uniform(20, 200), draw.uniform(700, 5000), draw.rand()
        t = np.arange(480)
        while k < min(n, at + burst):
            ring = np.sin(2 * np.pi * hertz * t / RATE_HZ + draw.uniform(0, 6))
            blow = np.exp(-t / decay) * (hiss * draw.randn(480) + (1 - hiss) * ring) * draw.uniform(0.5, 1)
            end = min(n, k + 480)
            out[k:end] += blow[: end - k]
            k += int(RATE_HZ / rate * draw.uniform(0.85, 1.15))
        at += burst + int(draw.uniform(0.1, 2) * RATE_HZ)
    return out


def grinder(n, draw):
    """High noise with a whine, both changing with the load."""
    t = np.arange(n) / RATE_HZ
    out = banded(n, draw.uniform(800, 2500), draw.uniform(4000, 8000), draw)
    load = 1 + 0.05 * np.sin(2 * np.pi * draw.uniform(0.1, 1) * t)
    whine = np.sin(2 * np.pi * np.cumsum(draw.uniform(250, 1500) * load) / RATE_HZ)
    out = out / out.std() + draw.uniform(0.1, 2) * whine
    return out * (1 + draw.uniform(0, 0.8) * np.sin(2 * np.pi * draw.uniform(0.2, 2) * t))


def air(n, draw):
    """Compressed air, on and off."""
    out, gate, at = banded(n, draw.uniform(300, 3000), 8000, draw), np.ones(n), 0
    while at < n:
        length = int(draw.uniform(0.2, 3) * RATE_HZ)
        gate[at : at + length] = draw.choice([0.05, 1, 1])
        at += length
    return out * np.convolve(gate, np.ones(400) / 400, "same")


def compressor(n, draw):
    """A slow hum with a beat, and the hiss of its belt."""
    t = np.arange(n) / RATE_HZ
    hum = sum(
        draw.uniform(0.2, 1) / (1 + 0.3 * k) * np.sin(2 * np.pi * draw.uniform(35, 90) * k * t + draw.uniform(0, 6))
        for k in range(1, 14)
    )
    hiss = banded(n, draw.uniform(300, 900), draw.uniform(2500, 5000), draw)
    beat = 1 + draw.uniform(0.1, 0.5) * np.sin(2 * np.pi * draw.uniform(4, 12) * t)
    return hum / hum.std() * beat + draw.uniform(0.2, 1.5) * hiss / hiss.std()


def clanks(n, draw):
    """Few, ringing."""
    out = 0.003 * draw.randn(n)
    for _ in range(draw.randint(3, 25)):
        length = int(draw.uniform(0.05, 0.8) * RATE_HZ)
        at, t = draw.randint(0, n - length), np.arange(length) / RATE_HZ
        modes = sum(
            draw.rand() * np.exp(-t * draw.uniform(4, 60)) * np.sin(2 * np.pi * draw.uniform(300, 7000) * t)
            for _ in range(draw.randint(3, 12))
        )
        out[at : at + length] += draw.uniform(0.1, 1) * modes
    return out


def music(n, draw):
    out = np.zeros(n)
    for _ in range(60):
        length = int(draw.uniform(0.1, 0.8) * RATE_HZ)
        at, t = draw.randint(0, n - length), np.arange(length) / RATE_HZ
        hertz = 110 * 2 ** (draw.randint(0, 40) / 12.0)
        tone = sum(np.sin(2 * np.pi * hertz * h * t) / h for h in range(1, 6))
        out[at : at + length] += draw.rand() * np.exp(-3 * t) * tone
    return out


def babble(n, draw, voices):
    """Five to nine people talking at once. Fewer can be understood, and a network that shall not hear them goes deaf."""
    out = np.zeros(n)
    for _ in range(draw.randint(5, 10)):
        at, gain = 0, draw.uniform(0.6, 1)
        while at < n:
            voice = voices[draw.randint(len(voices))]
            end = min(n, at + len(voice))
            out[at:end] += gain * voice[: end - at] / max(np.abs(voice).mean(), 1.0)
            at = end + int(draw.uniform(0, 0.2) * RATE_HZ)
    return out


def recorded_impacts(n, draw, impacts):
    out = 0.002 * draw.randn(n)
    for _ in range(draw.randint(4, 30)):
        hit, at = impacts[draw.randint(len(impacts))], draw.randint(0, n - 100)
        end = min(n, at + len(hit))
        out[at:end] += draw.uniform(0.1, 1) * hit[: end - at] / 20000
    return out


def equalised(sound, draw):
    spectrum = np.fft.rfft(sound)
    gains = 10 ** (draw.uniform(-12, 12, 6) / 20)
    return np.fft.irfft(
        spectrum * np.interp(np.linspace(0, 1, len(spectrum)), np.linspace(0, 1, 6), gains), len(sound)
    )


def noise(job):
    """(seed, voices, impacts, samples) to one noise of power 1, as float16."""
    seed, voices, impacts, n = job
    draw = np.random.RandomState(seed)
    kinds = [
        (0.11, background),
        (0.12, engine),
        (0.19, impact_tool),
        (0.11, grinder),
        (0.08, air),
        (0.15, compressor),
        (0.07, clanks),
        (0.02, music),
        (0.09, lambda n, draw: babble(n, draw, voices)),
        (0.06, lambda n, draw: recorded_impacts(n, draw, impacts)),
    ]
    kind = draw.choice(len(kinds), p=[share for share, _ in kinds])
    sound = kinds[kind][1](n, draw)
    if draw.rand() < 0.4:
        sound = equalised(sound, draw)
    return (sound / (sound.std() + 1e-6)).astype(np.float16)
