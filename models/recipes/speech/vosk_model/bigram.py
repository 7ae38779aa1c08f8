"""Dictation language model: a bigram of made sentences mixed with general word frequencies, with back-off over empty
arcs as in the grammars that Vosk builds at run time."""

import math
from collections import Counter, defaultdict

START, END, BACK_OFF = "<s>", "</s>", ""
UNKNOWN_SHARE = 0.002
GENERAL_SHARE = 0.35
GENERAL_END = 0.12


def cost(probability):
    return -math.log(max(probability, 1e-12))


def counted(sentences, vocabulary):
    """(how often each word, how often each word after another)."""
    words, pairs = Counter(), defaultdict(Counter)
    for sentence in sentences:
        known = [word for word in sentence if word in vocabulary]
        if not known:
            continue
        before = START
        for word in [*known, END]:
            words[word] += 1
            pairs[before][word] += 1
            before = word
    return words, pairs


def unigram(words, frequencies, unknown):
    total, total_frequency = sum(words.values()), sum(frequencies.values())
    shares = {
        word: (1 - GENERAL_SHARE) * words[word] / total
        + GENERAL_SHARE * (1 - GENERAL_END) * frequency / total_frequency
        for word, frequency in frequencies.items()
    }
    shares[END] = (1 - GENERAL_SHARE) * words[END] / total + GENERAL_SHARE * GENERAL_END
    shares[unknown] = UNKNOWN_SHARE
    whole = sum(shares.values())
    return {word: share / whole for word, share in shares.items()}


def bigram(sentences, frequencies, word_id, unknown, least=2):
    """(arcs, final costs) of the model, in the manner of Witten and Bell; pairs seen less than `least` times back off."""
    words, pairs = counted(sentences, frequencies)
    single = unigram(words, frequencies, unknown)
    states = {START: 0, BACK_OFF: 1}
    for before in pairs:
        states.setdefault(before, len(states))
    arcs, finals, back = [], {}, states[BACK_OFF]

    def add(state, word, probability):
        if word == END:
            finals[state] = cost(probability)
        else:
            arcs.append((state, word_id[word], word_id[word], cost(probability), states.get(word, back)))

    for word, probability in single.items():
        add(back, word, probability)
    for before, after in pairs.items():
        seen = sum(after.values())
        trust = seen / (seen + len(after))
        kept = {
            word: trust * count / seen + (1 - trust) * single[word]
            for word, count in after.items()
            if count >= least or word == END
        }
        rest = 1 - sum(single[word] for word in kept)
        for word, probability in kept.items():
            add(states[before], word, probability)
        left = max((1 - sum(kept.values())) / max(rest, 1e-9), 1e-9)
        arcs.append((states[before], 0, 0, cost(left), back))
    return arcs, finals
