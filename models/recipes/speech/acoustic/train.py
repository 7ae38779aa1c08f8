"""Trains the acoustic network with CTC for a given time.

    python -m acoustic.train --packs PACKS --start net.pt --out OUT --seconds 500
"""

import argparse
import json
import math
import os
import queue
import threading
import time
from multiprocessing import Pool

import numpy as np
import torch
import torch.nn.functional as F

from . import network
from .augment import Augmenter
from .contexts import CONTEXTS
from .noises import noise
from .packs import MOST_PARTS, Sampler, read_packs

LONGEST = 14 * 16000


class Sounds:
    """All utterances on the device; examples are put together there."""

    def __init__(self, utterances, device):
        lengths = [len(one.sound) for one in utterances]
        self.starts = np.concatenate([[0], np.cumsum(lengths)])[:-1]
        self.lengths, self.device = np.array(lengths), device
        self.flat = torch.from_numpy(np.concatenate([one.sound for one in utterances])).to(device)

    def plan(self, examples):
        """Where each part comes from and goes to, as numbers that cost little to send."""
        length = min(LONGEST, max(samples for _, _, samples in examples))
        length += -length % 4800
        plan = np.zeros((4, len(examples), MOST_PARTS), dtype=np.int64)
        for row, (parts, _, _) in enumerate(examples):
            for column, (at, number, gain) in enumerate(parts[:MOST_PARTS]):
                plan[:, row, column] = at, self.starts[number], self.lengths[number], int(gain * 1000)
        labels = np.concatenate([labels for _, labels, _ in examples])
        return length, plan, labels, np.array([len(labels) for _, labels, _ in examples])

    def sound(self, length, plan):
        at, start, count, gain = torch.from_numpy(plan).to(self.device)
        place = torch.arange(length, device=self.device)[None]
        out = torch.zeros(at.shape[0], length, device=self.device)
        for part in range(MOST_PARTS):
            step = place - at[:, part, None]
            inside = (step >= 0) & (step < count[:, part, None])
            source = (start[:, part, None] + step).clamp(0, len(self.flat) - 1)
            out += self.flat[source].float() * inside * (gain[:, part, None] / 1000.0)
        return out


def edits(a, b):
    row = list(range(len(b) + 1))
    for i, x in enumerate(a):
        before, row[0] = row[:], i + 1
        for j, y in enumerate(b):
            row[j + 1] = min(before[j] + (x != y), before[j + 1] + 1, row[j] + 1)
    return row[-1]


@torch.no_grad()
def phone_errors(net, mfcc, sampler, device, most=100):
    """Phone error rate in per cent on the utterances that were kept back, by source."""
    net.eval()
    rates = {}
    for name, group in sampler.kept.items():
        wrong = total = 0
        for number in group[:most]:
            one = sampler.utterances[number]
            sound = np.concatenate([np.zeros(3200), one.sound, np.zeros(4800)]).astype(np.float32)
            best = net(mfcc(torch.from_numpy(sound).to(device)[None]))[0].argmax(-1).tolist()
            heard = [k for j, k in enumerate(best) if k and (j == 0 or best[j - 1] != k)]
            wrong, total = wrong + edits(heard, one.labels.tolist()), total + len(one.labels)
        rates[name] = round(100 * wrong / max(total, 1), 1)
    net.train()
    return rates


class Mean:
    """The mean of the weights over the last part of the training."""

    def __init__(self, net):
        self.net, self.count, self.sums = net, 0, None

    def add(self):
        state = {name: value.detach().float().clone() for name, value in self.net.state_dict().items()}
        self.count += 1
        self.sums = state if self.sums is None else {n: self.sums[n] + v for n, v in state.items()}

    def state(self):
        return {name: value / self.count for name, value in self.sums.items()}


def arguments():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--packs", required=True)
    parser.add_argument("--start", required=True, help="weights to go on from")
    parser.add_argument("--out", required=True)
    parser.add_argument("--seconds", type=float, required=True)
    parser.add_argument("--context", choices=sorted(CONTEXTS), default="narrow")
    parser.add_argument("--without", nargs="*", default=[], help="sources to leave out, such as fsdd")
    parser.add_argument("--batch", type=int, default=256)
    parser.add_argument("--rate", type=float, default=4e-4)
    parser.add_argument("--noises", type=int, default=480)
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


def supply(sounds, sampler, batch, seed, ready):
    draw = np.random.RandomState(seed)
    while True:
        for examples in sampler.batches(draw, batch):
            ready.put(sounds.plan(examples))


def main():
    options = arguments()
    began = time.time()

    def say(*what):
        print(f"{time.time() - began:.0f} s", *what, flush=True)

    torch.manual_seed(options.seed)
    os.makedirs(options.out, exist_ok=True)
    utterances, impacts = read_packs(options.packs)
    sampler = Sampler(utterances, options.without, seed=options.seed)
    say({name: len(group) for name, group in sampler.groups.items()}, len(impacts), "impacts")
    bank = noise_bank(utterances, impacts, options.noises, options.seed).to(options.device)
    say("noises", tuple(bank.shape))
    sounds = Sounds(utterances, options.device)
    net = network.Network(CONTEXTS[options.context])
    network.load(net, options.start)
    net.to(options.device).train()
    net.lda.requires_grad_(False)
    augmenter = Augmenter(bank, options.device)
    weights = [p for p in net.parameters() if p.requires_grad]
    optimiser = torch.optim.AdamW(weights, lr=options.rate, weight_decay=1e-3, betas=(0.9, 0.98))
    ready = queue.Queue(24)
    for worker in range(2):
        job = (sounds, sampler, options.batch, options.seed * 1000 + worker, ready)
        threading.Thread(target=supply, args=job, daemon=True).start()
    mean, step, smooth, report = Mean(net), 0, None, 30.0
    start = time.time()
    while time.time() - start < options.seconds:
        passed = (time.time() - start) / options.seconds
        rate = options.rate * min(1, (step + 1) / 200) * (0.5 + 0.5 * math.cos(math.pi * passed)) + 2e-6
        for group in optimiser.param_groups:
            group["lr"] = rate
        length, plan, labels, counts = ready.get()
        features = augmenter.features(sounds.sound(length, plan))
        with torch.autocast(options.device, dtype=torch.bfloat16, enabled=options.device == "cuda"):
            logits = net(features)
        scores = logits.float().log_softmax(-1).transpose(0, 1)
        targets = torch.from_numpy(labels).to(options.device).long()
        target_lengths = torch.from_numpy(counts).to(options.device)
        frames = torch.full((len(counts),), scores.shape[0], dtype=torch.long, device=options.device)
        loss = F.ctc_loss(scores, targets, frames, target_lengths, reduction="none", zero_infinity=True)
        loss = (loss / target_lengths.clamp_min(4)).mean()
        optimiser.zero_grad(set_to_none=True)
        loss.backward()
        size = torch.nn.utils.clip_grad_norm_(weights, 2.0)
        if torch.isfinite(size):
            optimiser.step()
        step += 1
        if step % 20 == 0:
            smooth = loss.item() if smooth is None else 0.9 * smooth + 0.1 * loss.item()
            if passed > 0.7:
                mean.add()
        if time.time() - start > report:
            report += 60
            errors = phone_errors(net, augmenter.mfcc, sampler, options.device, 40)
            say("step", step, "loss", smooth, "waiting", ready.qsize(), errors)
    torch.save(net.state_dict(), f"{options.out}/last.pt")
    if mean.count:
        net.load_state_dict(mean.state())
    errors = phone_errors(net, augmenter.mfcc, sampler, options.device)
    torch.save({name: value.half() for name, value in net.state_dict().items()}, f"{options.out}/mean.pt")
    say("steps", step, "mean of", mean.count, errors)
    with open(f"{options.out}/run.json", "w") as file:
        json.dump({**vars(options), "steps": step, "phone_errors": errors}, file, indent=1)


if __name__ == "__main__":
    main()
