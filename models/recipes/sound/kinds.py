"""The kinds of sound, in the order of the classifier's outputs, and the sound's form."""

KINDS = (
    "speech",
    "impactTool",
    "grinderOrSaw",
    "engineOrCompressor",
    "alarm",
    "musicOrRadio",
    "quiet",
)
RATE_HZ = 16_000
WINDOW_SAMPLES = 16_000
