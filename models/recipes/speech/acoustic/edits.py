"""How far two sequences are apart; needs no torch."""


def edits(a, b):
    """Least number of insertions, deletions and replacements that turn one into the other."""
    row = list(range(len(b) + 1))
    for i, x in enumerate(a):
        before, row[0] = row[:], i + 1
        for j, y in enumerate(b):
            row[j + 1] = min(before[j] + (x != y), before[j + 1] + 1, row[j] + 1)
    return row[-1]
