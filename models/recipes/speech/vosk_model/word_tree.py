"""All words as the smallest deterministic transducer from phones to words."""

from collections import defaultdict

import pywrapfst

# Labels from here on mark the end of a word and tell words apart that sound alike.
END_MARKS = 1000


def places(pronunciation):
    """(phone, place in the word) of each phone."""
    last = len(pronunciation) - 1
    if last == 0:
        return [(pronunciation[0], "S")]
    return [(phone, "B" if n == 0 else "E" if n == last else "I") for n, phone in enumerate(pronunciation)]


def word_tree(lexicon, phones, word_id):
    alike = defaultdict(int)
    fst = pywrapfst.VectorFst()
    start, end = fst.add_state(), fst.add_state()
    fst.set_start(start)
    fst.set_final(end)
    free = pywrapfst.Weight.one("tropical")
    for word, pronunciations in lexicon:
        for pronunciation in pronunciations:
            labels = [phones.id[pair] for pair in places(pronunciation)]
            labels.append(END_MARKS + alike[pronunciation])
            alike[pronunciation] += 1
            state = start
            for place, label in enumerate(labels):
                target = end if place == len(labels) - 1 else fst.add_state()
                fst.add_arc(state, pywrapfst.Arc(label, word_id[word] if place == 0 else 0, free, target))
                state = target
    fst.arcsort("ilabel")
    tree = pywrapfst.determinize(fst)
    # Made small as an acceptor of pairs: words stay where they were put.
    pairs = pywrapfst.EncodeMapper("standard", encode_labels=True, encode_weights=True)
    tree.encode(pairs)
    tree.minimize()
    tree.decode(pairs)
    return tree
