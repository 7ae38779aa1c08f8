"""Trains the acoustic network with CTC for a given time.

    python -m acoustic.train --packs PACKS --start net.pt --out OUT --seconds 500

A loss of its own keeps what the start has learnt: on a noisy sound the network shall say what the start says to the
same voice close by.
"""

import argparse
import json
import math
import os
import time
from multiprocessing import Pool

import numpy as np
import torch
import torch.nn.functional as F

from . import network
from .augment import Augmenter
from .contexts import CONTEXTS
from .examples import Plans, Sampler, Sounds
from .judge import phone_errors
from .noises import noise
from .packs import read_folder, read_training

WARM_UP_STEPS = 300
LAST_RATE = 1e-5
MEAN_FROM = 0.7


class Mean:
    """The mean of the weights over the last part of the training."""

    def __init__(self):
        self.count, self.sums = 0, None

    def add(self, net):
        state = {name: value.detach().float().clone() for name, value in net.state_dict().items()}
        self.count += 1
        self.sums = state if self.sums is None else {n: self.sums[n] + v for n, v in state.items()}

    def state(self):
        return {name: value / self.count for name, value in self.sums.items()}


def arguments():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--packs", required=True)
    parser.add_argument("--judge", help="packs of recordings that are never trained on, for the reports only")
    parser.add_argument("--start", required=True, help="weights to go on from")
    parser.add_argument("--start-context", choices=sorted(CONTEXTS), default="narrow")
    parser.add_argument("--out", required=True)
    parser.add_argument("--seconds", type=float, required=True)
    parser.add_argument("--context", choices=sorted(CONTEXTS), default="narrow")
    parser.add_argument("--without", nargs="*", default=[], help="sources to leave out, such as fsdd")
    parser.add_argument("--teacher", type=float, default=0.3, help="weight of what the start says")
    parser.add_argument("--batch", type=int, default=256)
    parser.add_argument("--rate", type=float, default=1.5e-4)
    parser.add_argument("--noises", type=int, default=1600)
    parser.add_argument("--workers", type=int, default=6)
    parser.add_argument("--report", type=float, default=90, help="seconds between reports")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--device", default="cuda")
    return parser.parse_args()


def noise_bank(utterances, impacts, count, seed):
    draw = np.random.RandomState(seed)
    jobs = []
    for number in range(count):
        voices = [utterances[k].sound for k in draw.randint(0, len(utterances), 40)]
        jobs.append((seed * 100003 + number, voices, impacts[:40], 12 * 16000))
    with Pool() as pool:
        return torch.from_numpy(np.stack(pool.map(noise, jobs, chunksize=4)))


def grouped(utterances):
    groups = {}
    for one in utterances:
        groups.setdefault(one.source, []).append(one)
    return groups


class Training:
    def __init__(self, options, say):
        self.options, self.device = options, options.device
        torch.manual_seed(options.seed)
        utterances, impacts = read_training(options.packs)
        self.sampler = Sampler(utterances, options.without, seed=options.seed)
        say({name: len(group) for name, group in self.sampler.groups.items()}, len(impacts), "impacts")
        self.judged = {name: [utterances[k] for k in group[:60]] for name, group in self.sampler.kept.items()}
        if options.judge:
            self.judged.update(grouped(read_folder(options.judge)))
        bank = noise_bank(utterances, impacts, options.noises, options.seed)
        say("noises", tuple(bank.shape))
        plans = Plans(self.sampler, options.batch, options.seed)
        self.plans = iter(
            torch.utils.data.DataLoader(plans, batch_size=None, num_workers=options.workers, prefetch_factor=8)
        )
        self.sounds = Sounds(utterances, self.device)
        self.augmenter = Augmenter(bank.to(self.device), self.device)
        self.net = self.network(options.context).train()
        self.teacher = self.network(options.start_context).eval().requires_grad_(False)
        self.net.lda.requires_grad_(False)
        self.weights = [p for p in self.net.parameters() if p.requires_grad]
        self.optimiser = torch.optim.AdamW(self.weights, lr=options.rate, weight_decay=1e-3, betas=(0.9, 0.98))

    def network(self, context):
        net = network.Network(CONTEXTS[context])
        network.load(net, self.options.start)
        return net.to(self.device)

    def scores(self, net, features):
        with torch.autocast(self.device, dtype=torch.bfloat16, enabled=self.device == "cuda"):
            logits = net(features)
        return logits.float().log_softmax(-1)

    def loss(self):
        """Loss for each label: of CTC, and of what the start says to the voice close by."""
        length, plan, labels, counts = next(self.plans)
        sound = self.sounds.sound(int(length), plan)
        heard, close = self.augmenter.features(sound, clean=self.options.teacher > 0)
        scores = self.scores(self.net, heard)
        labels, counts = labels.to(self.device).long(), counts.to(self.device)
        frames = torch.full((len(counts),), scores.shape[1], dtype=torch.long, device=self.device)
        ctc = F.ctc_loss(scores.transpose(0, 1), labels, frames, counts, reduction="none", zero_infinity=True)
        each = counts.clamp_min(4)
        ctc = (ctc / each).mean()
        if close is None:
            return ctc, torch.zeros_like(ctc)
        with torch.no_grad():
            said = self.scores(self.teacher, close)
        apart = (said.exp() * (said - scores)).sum((1, 2))
        return ctc, (apart / each).mean()

    def step(self, rate):
        for group in self.optimiser.param_groups:
            group["lr"] = rate
        ctc, apart = self.loss()
        self.optimiser.zero_grad(set_to_none=True)
        (ctc + self.options.teacher * apart).backward()
        size = torch.nn.utils.clip_grad_norm_(self.weights, 2.0)
        if torch.isfinite(size):
            self.optimiser.step()
        return ctc.detach(), apart.detach()

    def errors(self):
        return phone_errors(self.net, self.augmenter.mfcc, self.judged, self.device)


def rate_at(step, passed, highest):
    """Up in a line over the first steps, then down along a cosine."""
    falling = LAST_RATE + (highest - LAST_RATE) * (0.5 + 0.5 * math.cos(math.pi * min(1.0, passed)))
    return falling * min(1.0, (step + 1) / WARM_UP_STEPS)


def main():
    options = arguments()
    began = time.time()

    def say(*what):
        print(f"{time.time() - began:.0f} s", *what, flush=True)

    os.makedirs(options.out, exist_ok=True)
    training = Training(options, say)
    say("start", training.errors())
    mean, step, losses = Mean(), 0, []
    start = time.time()
    report = start + 20
    while time.time() - start < options.seconds:
        passed = (time.time() - start) / options.seconds
        losses.append(training.step(rate_at(step, passed, options.rate)))
        step += 1
        if step % 20 == 0 and passed > MEAN_FROM:
            mean.add(training.net)
        if time.time() > report:
            report = time.time() + options.report
            ctc, apart = (round(float(torch.stack(one[-200:]).mean()), 3) for one in zip(*losses))
            say("step", step, "losses", ctc, apart, training.errors())
            losses = losses[-200:]
    if mean.count:
        training.net.load_state_dict(mean.state())
    errors = training.errors()
    torch.save({name: value.half() for name, value in training.net.state_dict().items()}, f"{options.out}/mean.pt")
    say("steps", step, "mean of", mean.count, errors)
    with open(f"{options.out}/run.json", "w") as file:
        json.dump({**vars(options), "steps": step, "phone_errors": errors}, file, indent=1)


if __name__ == "__main__":
    main()
