"""Frames that each factored layer looks to the left and right. From the fifth on, one frame in three is computed."""

NARROW = ((1, 1),) * 3 + ((0, 0),) + ((3, 3),) * 5 + ((3, 0),) * 5
WIDE = ((1, 1),) * 3 + ((0, 0),) + ((3, 3),) * 10
CONTEXTS = {"narrow": NARROW, "wide": WIDE}
