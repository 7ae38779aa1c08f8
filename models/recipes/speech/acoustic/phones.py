"""The 39 phones of CMUdict without stress, in the order of the network's outputs (after blank)."""

PHONES = (
    "AA AE AH AO AW AY B CH D DH EH ER EY F G HH IH IY JH K L M N NG OW OY P R S SH T TH UH UW V W Y Z ZH"
).split()
