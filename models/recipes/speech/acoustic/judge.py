"""Phone errors of a network: what its loudest outputs say beside the labels."""

import numpy as np
import torch

from .edits import edits


def heard(scores):
    """The phones of the loudest output in each frame, repeats and blanks left out."""
    best = scores.argmax(-1).tolist()
    return [k for j, k in enumerate(best) if k and (j == 0 or best[j - 1] != k)]


@torch.no_grad()
def phone_errors(net, mfcc, groups, device):
    """Phone error rate in per cent of groups of utterances, each between two stretches of a quiet microphone."""
    was_training = net.training
    net.eval()
    rates = {}
    for name, utterances in groups.items():
        wrong = total = 0
        for one in utterances:
            sound = np.concatenate([np.zeros(3200), one.sound, np.zeros(4800)])
            sound += np.random.RandomState(len(sound)).randn(len(sound)) * 3
            sound = torch.from_numpy(sound.astype(np.float32)).to(device)[None]
            wrong += edits(heard(net(mfcc(sound))[0]), one.labels.tolist())
            total += len(one.labels)
        rates[name] = round(100 * wrong / max(total, 1), 1)
    net.train(was_training)
    return rates
