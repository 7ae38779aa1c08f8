"""Training examples: one utterance, or several with pauses between them, drawn by the shares of the sources."""

import numpy as np
import torch

SHARES = {"an4": 0.17, "ww": 0.06, "fsdd": 0.16, "sti": 0.11, "kokoro": 0.38, "other": 0.12}
MOST_PARTS = 6
LONGEST = 14 * 16000


class Sampler:
    """Draws examples; every fiftieth utterance or so is kept back, but for the digits, which are few."""

    def __init__(self, utterances, without=(), held_out=0.02, seed=1):
        draw = np.random.RandomState(seed)
        self.lengths = np.array([len(one.sound) for one in utterances])
        self.starts = np.concatenate([[0], np.cumsum(self.lengths)])[:-1]
        self.labels = [one.labels for one in utterances]
        self.groups, self.kept, speakers = {}, {}, {}
        for number, one in enumerate(utterances):
            if one.source in without:
                continue
            source = one.source if one.source in SHARES else "other"
            group = self.kept if draw.rand() < held_out and source != "fsdd" else self.groups
            group.setdefault(source, []).append(number)
            if source == "fsdd":
                speakers.setdefault(one.speaker, []).append(number)
        self.speakers = list(speakers.values())
        self.names = [name for name in SHARES if name in self.groups]
        self.shares = np.array([SHARES[name] for name in self.names])
        self.shares /= self.shares.sum()

    def example(self, draw):
        """([(start, utterance, gain)], labels, samples)."""
        name = self.names[draw.choice(len(self.names), p=self.shares)]
        if name == "fsdd":  # single digits: several of one speaker make a number
            own = self.speakers[draw.randint(len(self.speakers))]
            count = draw.choice([1, 2, 3, 4, 5, 6], p=[0.15, 0.15, 0.2, 0.2, 0.18, 0.12])
            picked, longest_gap, shortest_gap = [own[draw.randint(len(own))] for _ in range(count)], 0.3, 0.0
        else:
            own, longest_gap, shortest_gap = self.groups[name], 0.6, 0.05
            picked = [own[draw.randint(len(own))]]
            while len(picked) < MOST_PARTS and draw.rand() < 0.3 and self.lengths[picked].sum() < 3 * 16000:
                picked.append(own[draw.randint(len(own))])
        at = int(draw.uniform(0, 0.9) * 16000) if draw.rand() < 0.8 else 0
        parts = []
        for place, number in enumerate(picked):
            if place:
                at += int(draw.uniform(shortest_gap, longest_gap) * 16000)
            parts.append((at, number, 10 ** (draw.uniform(-6, 6) / 20) if place else 1.0))
            at += int(self.lengths[number])
        labels = np.concatenate([self.labels[number] for number in picked])
        return parts, labels, at + int(draw.uniform(0.15, 0.9) * 16000)

    def batches(self, draw, size, among=4):
        """Batches of examples of about the same length."""
        examples = sorted((self.example(draw) for _ in range(among * size)), key=lambda one: one[2])
        groups = [examples[n * size : (n + 1) * size] for n in range(among)]
        draw.shuffle(groups)
        return groups

    def plan(self, examples):
        """(samples, [4, examples, parts] of place, first sample, samples, gain in thousandths, labels, their counts)."""
        length = min(LONGEST, max(samples for _, _, samples in examples))
        length += -length % 4800
        plan = np.zeros((4, len(examples), MOST_PARTS), dtype=np.int64)
        for row, (parts, _, _) in enumerate(examples):
            for column, (at, number, gain) in enumerate(parts[:MOST_PARTS]):
                plan[:, row, column] = at, self.starts[number], self.lengths[number], int(gain * 1000)
        labels = np.concatenate([labels for _, labels, _ in examples])
        return length, plan, labels, np.array([len(labels) for _, labels, _ in examples])


class Plans(torch.utils.data.IterableDataset):
    """Plans of batches without end, made by processes beside the training: they are numbers, and cheap to send."""

    def __init__(self, sampler, size, seed):
        self.sampler, self.size, self.seed = sampler, size, seed

    def __iter__(self):
        draw = np.random.RandomState(self.seed * 1000 + torch.utils.data.get_worker_info().id)
        while True:
            for examples in self.sampler.batches(draw, self.size):
                yield self.sampler.plan(examples)


class Sounds:
    """All utterances on the device, where plans become sounds."""

    def __init__(self, utterances, device):
        self.device = device
        self.flat = torch.from_numpy(np.concatenate([one.sound for one in utterances])).to(device)

    def sound(self, length, plan):
        parts = int((plan[2] > 0).any(0).sum())
        at, start, count, gain = plan.to(self.device)
        place = torch.arange(length, device=self.device)[None]
        out = torch.zeros(at.shape[0], length, device=self.device)
        for part in range(parts):
            step = place - at[:, part, None]
            inside = (step >= 0) & (step < count[:, part, None])
            source = (start[:, part, None] + step).clamp(0, len(self.flat) - 1)
            out += self.flat[source].float() * inside * (gain[:, part, None] / 1000.0)
        return out
