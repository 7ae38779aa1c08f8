"""Made sentences of a workshop, for the dictation language model."""

import random

ONES = "zero one two three four five six seven eight nine".split()
TEENS = "ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen".split()
TENS = "twenty thirty forty fifty sixty seventy eighty ninety".split()


def two_digit(n):
    if n < 10:
        return [ONES[n]]
    if n < 20:
        return [TEENS[n - 10]]
    return [TENS[n // 10 - 2]] + ([ONES[n % 10]] if n % 10 else [])


def spoken_number(r):
    """A number the way people say readings: "one twenty", "one hundred and twenty point five", ..."""
    kind = r.random()
    if kind < 0.35:
        w = two_digit(r.randrange(100))
    elif kind < 0.55:
        h, rest = r.randrange(1, 10), r.randrange(100)
        w = [ONES[h], "hundred"]
        if rest:
            w += (["and"] if r.random() < 0.5 else []) + two_digit(rest)
    elif kind < 0.75:
        h, rest = r.randrange(1, 10), r.randrange(1, 100)
        w = [ONES[h]] + (["oh", ONES[rest]] if rest < 10 else two_digit(rest))
    elif kind < 0.88:
        w = [ONES[r.randrange(10)] for _ in range(r.randrange(2, 6))]
    else:
        w = two_digit(r.randrange(1, 30)) + ["thousand"]
        if r.random() < 0.5:
            w += [ONES[r.randrange(1, 10)], "hundred"]
    if r.random() < 0.3:
        w += ["point"] + [ONES[r.randrange(10)] for _ in range(r.randrange(1, 3))]
    return w


def listed(text):
    return text.replace("\n", "").split("|")


UNIT = listed("""
newton meters|newton meter|foot pounds|inch pounds|millimeters|millimeter|inches|inch|degrees|
degrees celsius|bar|psi|liters|milliliters|volts|amps|ohms|percent|grams|kilograms|turns|clicks|microns|
minutes|seconds|hours|kilopascals|rpm
""")
PART = listed("""
bolt|bolts|nut|nuts|washer|gasket|seal|caliper|rotor|bearing|hub|bracket|harness|connector|hose|filter|
pump|valve|screw|stud|clip|clamp|cover|plate|shaft|belt|sensor|switch|fuse|battery|brake pad|
brake disc|brake line|oil filter|oil pan|drain plug|wheel bearing|wheel nut|lug nut|spark plug|control arm|
ball joint|tie rod|shock absorber|cylinder head|timing belt|water pump|fuel line|air filter|heat shield|
lock nut|thrust washer|snap ring|cotter pin|spring washer|wiring harness|mounting bracket|drive shaft|gear box
""")
SIDE = listed("""
left|right|upper|lower|front|rear|inner|outer|top|bottom|upper left|lower right|front left|rear right
""")
FLUID = listed("""
oil|coolant|brake fluid|gear oil|grease|thread locker|sealant|solvent|fuel|engine oil|hydraulic fluid|
anti seize
""")
COND = listed("""
loose|tight|cracked|worn|bent|stripped|broken|missing|leaking|dirty|clean|damaged|corroded|rusty|
scratched|dented|burned|stuck|seized|contaminated|out of spec|within spec|too tight|too loose|
cross threaded|warped|torn|fine|okay|good|wet|dry|hot|cold
""")
DONE = listed("""
replaced|reused|removed|installed|torqued|tightened|loosened|cleaned|inspected|checked|measured|adjusted|
aligned|filled|refilled|drained|greased|connected|disconnected|marked|tested|verified|skipped
""")
CMD = listed("""
next|next step|back|go back|previous step|repeat|repeat that|say again|done|step done|finished|skip|
skip step|undo|confirm|confirmed|cancel|stop|hold|hold on|resume|continue|pause|note|add note|take note|
deviation|report deviation|reason|photo|take photo|take a photo|help|call foreman|call the foreman|start job|
close job|open job|start shift|end shift|ready|okay|yes|no|affirmative|negative|correct|wrong|check|pass|
fail|that is correct|that is wrong|i am done|i need help|show drawing|show manual|read it again|louder|
slower|sign off|log out|log in|scan part|order part
""")
TEMPLATES = """{cmd}
{cmd}
{num} {unit}
{num}
torqued {num}
torqued to {num} {unit}
torque {num} {unit}
torque is {num} {unit}
{part} torqued to {num} {unit}
{side} {part} torqued {num}
{side} {part} {cond}
the {side} {part} is {cond}
the {part} is {cond}
{part} {cond}
{part} is {cond} and needs to be replaced
{part} {done}
the {part} was {done}
{done} the {side} {part}
{done} {part}
i {done} the {part}
note {part} {cond}
note the {side} {part} is {cond}
deviation the {part} was {cond}
reason {part} {cond}
fill {num} {unit} of {fluid}
filled {num} {unit}
filled with {num} {unit} of {fluid}
drained the {fluid}
{fluid} {done}
{fluid} level is low
{fluid} is leaking from the {part}
there is a leak at the {part}
there is {fluid} on the {side} {part}
apply {fluid} to the {part}
clean the {part}
replace the {part}
reuse the {part}
check the {side} {part}
gap is {num} {unit}
measured {num} {unit}
reading is {num}
reading {num} {unit}
pressure {num} {unit}
temperature {num} {unit}
clearance {num} {unit}
depth {num} {unit}
step {num}
go to step {num}
bay {num}
job {num}
part number {num}
serial number {num}
batch {num}
quantity {num}
we are out of {part}
i could not find the {part}
wrong {part} in the kit
missing {num} {part}
one {part} left over
{num} {part} missing
waiting for {part}
tool is broken
the {part} does not fit
the thread is stripped on the {side} {part}
used a new {part}
used {fluid} on the {part}
tightened by hand
passed
failed because the {part} is {cond}""".split("\n")


def corpus(n, seed=1):
    r = random.Random(seed)
    pools = {"cmd": CMD, "unit": UNIT, "part": PART, "side": SIDE, "fluid": FLUID, "cond": COND, "done": DONE}
    for _ in range(n):
        out = []
        for tok in r.choice(TEMPLATES).split():
            if tok == "{num}":
                out += spoken_number(r)
            elif tok[0] == "{":
                out += r.choice(pools[tok[1:-1]]).split()
            else:
                out.append(tok)
        yield out
