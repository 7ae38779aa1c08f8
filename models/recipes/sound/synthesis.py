"""Sounds of a bay made from nothing: each function gives mono samples of any scale.

Rates, orders and tones are common practice of the trade, no source; they are drawn widely on purpose.
"""

import numpy as np
from scipy.signal import butter, lfilter, sosfilt

from kinds import RATE_HZ


def noise(random, samples, tilt_db_per_octave=0.0):
    """Noise whose spectrum falls or rises by so much per octave."""
    spectrum = np.fft.rfft(random.standard_normal(samples))
    hertz = np.maximum(np.fft.rfftfreq(samples, 1 / RATE_HZ), 40)
    spectrum *= (hertz / 1000) ** (tilt_db_per_octave / 6.02)
    made = np.fft.irfft(spectrum, samples)
    return made / (np.std(made) + 1e-12)


def band(samples, low_hz, high_hz):
    low, high = max(20, low_hz), min(7900, high_hz)
    return sosfilt(butter(2, (low, high), "bandpass", fs=RATE_HZ, output="sos"), samples)


def wander(random, samples, depth, per_s=1.0):
    """A factor about 1 that drifts slowly."""
    knots = max(3, int(samples / RATE_HZ * per_s) + 3)
    path = 1 + depth * random.standard_normal(knots)
    return np.interp(np.linspace(0, knots - 1, samples), np.arange(knots), path)


def tone(random, samples, hertz, harmonics, fall, wobble):
    """A buzz: harmonics that fall by a power of their number, with a pitch that drifts."""
    phase = 2 * np.pi * np.cumsum(hertz * wander(random, samples, wobble, 2)) / RATE_HZ
    made = np.zeros(samples)
    for order in range(1, harmonics + 1):
        if order * hertz > 7600:
            break
        weight = order**-fall * random.uniform(0.4, 1.6)
        made += weight * np.sin(order * phase + random.uniform(0, 6.28))
    return made / (np.std(made) + 1e-12)


def ring(random, low_hz, high_hz, decay_s, modes):
    """What one blow leaves: a click and damped resonances."""
    samples = int(min(0.6, 6 * decay_s) * RATE_HZ)
    at = np.arange(samples) / RATE_HZ
    made = 0.6 * random.standard_normal(samples) * np.exp(-at / 0.002)
    for _ in range(modes):
        hertz = np.exp(random.uniform(np.log(low_hz), np.log(high_hz)))
        made += (
            random.uniform(0.3, 1)
            * np.exp(-at / (decay_s * random.uniform(0.4, 1.2)))
            * np.sin(2 * np.pi * hertz * at + random.uniform(0, 6.28))
        )
    return made


def blows(random, samples, per_s, make, jitter=0.08):
    """Blow after blow at a rate, each a little different."""
    made = np.zeros(samples + RATE_HZ)
    at = random.uniform(0, RATE_HZ / per_s)
    while at < samples:
        one = make() * random.uniform(0.6, 1)
        one = one[: len(made) - int(at)]
        made[int(at) : int(at) + len(one)] += one
        at += RATE_HZ / per_s * max(0.3, 1 + jitter * random.standard_normal())
    return made[:samples]


def impact_wrench(random, samples):
    per_s = random.uniform(14, 48)
    decay = random.uniform(0.004, 0.03)
    low, high, modes = random.uniform(300, 1200), random.uniform(2500, 7000), random.integers(2, 6)
    shapes = [ring(random, low, high, decay, modes) for _ in range(4)]
    made = blows(random, samples, per_s, lambda: shapes[random.integers(4)])
    air = band(noise(random, samples, random.uniform(-2, 4)), 1500, 7500)
    motor = tone(random, samples, random.uniform(150, 900), 8, 1, 0.03)
    rattle = 1 + 0.5 * np.sin(2 * np.pi * per_s / random.integers(2, 5) * np.arange(samples) / RATE_HZ)
    made = made / (np.std(made) + 1e-9) * rattle
    return made + random.uniform(0.05, 0.5) * air + random.uniform(0, 0.25) * motor


def hammer(random, samples):
    per_s = random.uniform(2, 9)
    decay = random.uniform(0.01, 0.12)
    shapes = [ring(random, 300, 6500, decay, random.integers(3, 8)) for _ in range(3)]
    return blows(random, samples, per_s, lambda: shapes[random.integers(3)], 0.2)


def air_hammer(random, samples):
    """Dull blows with a puff of air after each."""
    per_s = random.uniform(9, 45)
    length = int(RATE_HZ * min(0.08, 0.8 / per_s))
    fade = np.exp(-np.arange(length) / RATE_HZ / random.uniform(0.003, 0.02))
    puffs = [band(random.standard_normal(length), 300, random.uniform(2500, 7500)) * fade for _ in range(4)]
    shape = ring(random, 80, 2500, random.uniform(0.004, 0.025), 5)
    made = blows(random, samples, per_s, lambda: shape, 0.04)
    air = blows(random, samples, per_s, lambda: puffs[random.integers(4)], 0.04)
    made = made / (np.std(made) + 1e-9) + random.uniform(0.3, 1.5) * air / (np.std(air) + 1e-9)
    return made + random.uniform(0.05, 0.5) * noise(random, samples, random.uniform(-3, 2))


def ratchet(random, samples):
    shape = ring(random, 1500, 7000, random.uniform(0.002, 0.008), 3)
    return blows(random, samples, random.uniform(10, 40), lambda: shape, 0.25)


def grinder(random, samples):
    load = wander(random, samples, random.uniform(0.02, 0.12), random.uniform(0.5, 4))
    pitch = random.uniform(180, 1400)
    phase = 2 * np.pi * np.cumsum(pitch * load) / RATE_HZ
    made = np.zeros(samples)
    for order in range(1, 14):
        if order * pitch < 7500:
            made += order ** -random.uniform(0.3, 1.4) * np.sin(order * phase + random.uniform(0, 6.28))
    scrape = band(noise(random, samples, random.uniform(-1, 5)), random.uniform(800, 2500), 7800)
    scrape *= np.maximum(0.1, wander(random, samples, random.uniform(0.1, 0.8), 8))
    flutter = 1 + random.uniform(0, 0.6) * np.sin(
        2 * np.pi * random.uniform(20, 190) * np.arange(samples) / RATE_HZ
    )
    return (made / (np.std(made) + 1e-9) * random.uniform(0.2, 1.2) + scrape) * flutter


def saw(random, samples):
    teeth = random.uniform(700, 3800)
    drift = wander(random, samples, random.uniform(0.01, 0.06), 3)
    phase = 2 * np.pi * np.cumsum(teeth * drift) / RATE_HZ
    made = np.sin(phase) + 0.5 * np.sin(2 * phase) + random.uniform(0, 0.6) * np.sin(0.5 * phase)
    bite = band(noise(random, samples, 2), teeth * 0.7, min(7800, teeth * 3))
    body = tone(random, samples, random.uniform(90, 320), 12, 0.8, 0.03)
    return made + random.uniform(0.4, 2) * bite + random.uniform(0.2, 1) * body


def chainsaw(random, samples):
    """A small two-stroke at speed."""
    made = tone(random, samples, random.uniform(90, 240), 30, random.uniform(0.2, 0.8), 0.04)
    return made + random.uniform(0.2, 0.8) * band(noise(random, samples, 1), 1000, 7500)


def engine(random, samples):
    rpm = random.uniform(600, 4500)
    cylinders = random.choice([1, 2, 3, 4, 6, 8])
    firing = rpm / 60 * cylinders / 2
    speed = wander(random, samples, random.uniform(0.005, 0.1), 1.5)
    phase = np.cumsum(firing * speed) / RATE_HZ
    uneven = 1 + random.uniform(0, 0.4) * random.standard_normal(cylinders)
    strokes = np.clip(uneven, 0.2, None)[np.floor(phase).astype(int) % cylinders]
    puff = np.exp(-(phase % 1) * random.uniform(4, 25)) * strokes
    made = puff - np.mean(puff)
    for _ in range(3):
        hertz, width = random.uniform(50, 900), random.uniform(0.1, 0.6)
        made = made + 0.8 * band(made, hertz * (1 - width / 2), hertz * (1 + width / 2))
    clatter = band(noise(random, samples), 800, random.uniform(2500, 6500)) * (0.3 + puff)
    made = made / (np.std(made) + 1e-9)
    made += random.uniform(0.05, 0.6) * clatter / (np.std(clatter) + 1e-9)
    return made + random.uniform(0.05, 0.4) * noise(random, samples, -4)


def compressor(random, samples):
    thump = ring(random, 60, 400, random.uniform(0.01, 0.04), 3)
    made = blows(random, samples, random.uniform(6, 28), lambda: thump, 0.01)
    hum = tone(random, samples, random.choice([50, 60, 100, 120]) * random.uniform(0.97, 1), 12, 0.7, 0.002)
    hiss = noise(random, samples, random.uniform(-3, 0))
    made = made / (np.std(made) + 1e-9)
    return made + random.uniform(0.2, 1.2) * hum + random.uniform(0.1, 0.6) * hiss


def air_hiss(random, samples):
    """A leak, a blow gun, a fan."""
    made = band(noise(random, samples, random.uniform(-1, 4)), random.uniform(200, 2500), 7900)
    if random.random() < 0.4:
        made = made * (wander(random, samples, 0.8, 3) > 0.7)
    return made + 0.05 * noise(random, samples, -3)


def beeper(random, samples):
    """Reversing and back-up beeps, lifts, testers."""
    at = np.arange(samples) / RATE_HZ
    hertz = random.uniform(600, 3800)
    period, duty = random.uniform(0.12, 1.1), random.uniform(0.3, 0.7)
    on = ((at / period + random.random()) % 1) < duty
    made = np.sin(2 * np.pi * hertz * at)
    for order in (2, 3, 5):
        if order * hertz < 7800:
            made += random.uniform(0, 0.6) * np.sin(2 * np.pi * order * hertz * at)
    return lfilter([0.02], [1, -0.98], on.astype(float)) * made


def siren(random, samples):
    at = np.arange(samples) / RATE_HZ
    low, ratio, period = random.uniform(400, 1800), random.uniform(1.15, 2), random.uniform(0.2, 2)
    turn = (at / period + random.random()) % 1
    shape = random.integers(3)
    swing = (turn < 0.5) if shape == 0 else turn if shape == 1 else 0.5 - 0.5 * np.cos(2 * np.pi * turn)
    phase = 2 * np.pi * np.cumsum(low * (1 + (ratio - 1) * swing)) / RATE_HZ
    return np.sin(phase) + random.uniform(0, 0.7) * np.sin(3 * phase) + random.uniform(0, 0.5) * np.sin(2 * phase)


def horn(random, samples):
    """One or two reeds, rich in overtones and steady, through a trumpet."""
    made = 0
    for _ in range(random.integers(1, 4)):
        made = made + tone(random, samples, random.uniform(260, 700), 24, random.uniform(0, 0.8), 0.0007)
    middle = random.uniform(600, 3200)
    made = made + random.uniform(0.3, 2.5) * band(made, middle * 0.6, middle * 1.6)
    at = np.arange(samples) / RATE_HZ
    period = random.uniform(0.5, 4)
    on = ((at / period + random.random()) % 1) < random.uniform(0.5, 0.95)
    return made * lfilter([0.02], [1, -0.98], on.astype(float))


def bell(random, samples):
    """A bell that is struck again and again."""
    shape = ring(random, 700, 5000, random.uniform(0.08, 0.3), 5)
    at = np.arange(len(shape)) / RATE_HZ
    shape = shape + np.exp(-at / 0.15) * np.sin(2 * np.pi * random.uniform(700, 3000) * at) * 2
    return blows(random, samples, random.uniform(5, 22), lambda: shape, 0.01)


def music(random, samples):
    """Chords, a line, a bass and drums in some key, speed and colour."""
    beat_s = 60 / random.uniform(70, 170)
    key = random.uniform(110, 260)
    made = np.zeros(samples + 2 * RATE_HZ)
    scale = random.choice([[0, 2, 4, 5, 7, 9, 11], [0, 2, 3, 5, 7, 8, 10], [0, 3, 5, 7, 10]][0:2])

    def note(step, seconds, fall, decay):
        length = int(seconds * RATE_HZ)
        at = np.arange(length) / RATE_HZ
        hertz = key * 2 ** (step / 12)
        vibrato = 1 + 0.004 * np.sin(2 * np.pi * 5.5 * at) * (random.random() < 0.4)
        phase = 2 * np.pi * np.cumsum(hertz * vibrato) / RATE_HZ
        body = sum(k**-fall * np.sin(k * phase) for k in range(1, 12) if k * hertz < 7600)
        return body * np.exp(-at / decay) * np.minimum(1, at / 0.01) * np.minimum(1, (seconds - at) / 0.02)

    def put(at_s, sound, gain):
        at = int(at_s * RATE_HZ)
        end = min(len(made), at + len(sound))
        if end > at:
            made[at:end] += gain * sound[: end - at]

    fall, decay = random.uniform(0.7, 2), random.uniform(0.15, 2)
    drums, chords, line, bass = random.random() < 0.7, random.random() < 0.85, random.random() < 0.8, random.random() < 0.7
    root, at_s, beat = 0, -random.uniform(0, beat_s), 0
    while at_s < samples / RATE_HZ:
        start = max(0, at_s)
        if beat % 4 == 0:
            root = int(random.choice(scale))
        if chords and beat % 2 == 0:
            for step in (0, int(random.choice([3, 4])), 7):
                put(start, note(root + step, 2 * beat_s, fall, decay * 2), 0.5)
        if bass:
            put(start, note(root - 12, beat_s, fall, 0.4), 0.8)
        if line:
            for half in (0, 0.5):
                if random.random() < 0.75:
                    put(start + half * beat_s, note(12 + int(random.choice(scale)), beat_s / 2, fall, decay), 0.7)
        if drums:
            length = int(0.12 * RATE_HZ)
            at = np.arange(length) / RATE_HZ
            put(start, np.sin(2 * np.pi * 60 * at * (1 + np.exp(-at * 40))) * np.exp(-at * 25), 1.4 * (beat % 2 == 0))
            put(start, random.standard_normal(length) * np.exp(-at * 30), 0.5 * (beat % 2 == 1))
            for half in (0, 0.5):
                put(start + half * beat_s, band(random.standard_normal(length), 5000, 7800) * np.exp(-at * 70), 0.5)
        beat, at_s = beat + 1, at_s + beat_s
    return made[:samples] + 1e-4 * random.standard_normal(samples)


def room(random, samples):
    """A room where nobody does anything: its air, a lamp, the microphone."""
    made = noise(random, samples, random.uniform(-7, 1))
    if random.random() < 0.4:
        made = made + random.uniform(0, 0.6) * tone(random, samples, random.choice([50, 60, 100, 120]), 6, 1, 0.001)
    return made


MADE = {
    "impactTool": (impact_wrench, impact_wrench, impact_wrench, air_hammer, air_hammer, hammer, ratchet),
    "grinderOrSaw": (grinder, grinder, saw, chainsaw),
    "engineOrCompressor": (engine, engine, compressor, air_hiss),
    "alarm": (beeper, beeper, siren, horn, horn, bell),
    "musicOrRadio": (music,),
    "quiet": (room,),
}
