"""The acoustic network: factored time-delay layers (TDNN-F), one output for blank and one for each phone."""

import torch
import torch.nn.functional as F
from torch import nn

from .contexts import NARROW

OUTPUTS = 40
SKIP = 0.66


class Norm(nn.Module):
    """Batch norm without learned scale and offset. Its mean and variance stay those of the stored weights, so that
    what is trained is the very network that is exported."""

    def __init__(self, size):
        super().__init__()
        self.register_buffer("mean", torch.zeros(size))
        self.register_buffer("var", torch.ones(size))
        self.eps = 1e-3

    def forward(self, x):
        return (x - self.mean.to(x.dtype)) * torch.rsqrt(self.var + self.eps).to(x.dtype)


class Spliced(nn.Module):
    """An affine layer over several frames side by side."""

    def __init__(self, inputs, outputs, taps, bias=True):
        super().__init__()
        self.lin = nn.Linear(inputs * taps, outputs, bias=bias)

    def forward(self, x, offsets):
        low, length = min(offsets), x.shape[1] - (max(offsets) - min(offsets))
        parts = [x[:, o - low : o - low + length] for o in offsets]
        return self.lin(torch.cat(parts, -1) if len(parts) > 1 else parts[0])


def taps(step, rate=1):
    """Offsets of a layer that looks `step` frames away: the frame itself, and the other one if there is one."""
    return [0, step // rate] if step else [0]


class Network(nn.Module):
    """Features [B, T, 40] to logits [B, ceil(T / 3), 40]. The short names are those of the stored weights."""

    def __init__(self, context=NARROW, size=768, neck=64, last=128, noise=0.03):
        super().__init__()
        self.context, self.noise = context, noise
        self.lda, self.t1, self.bn1 = Spliced(40, 220, 3), Spliced(220, size, 1), Norm(size)
        self.lins = nn.ModuleList(Spliced(size, neck, len(taps(l)), bias=False) for l, _ in context)
        self.affs = nn.ModuleList(Spliced(neck, size, len(taps(r))) for _, r in context)
        self.bns = nn.ModuleList(Norm(size) for _ in context)
        self.pre, self.paff, self.pbn = Spliced(size, neck, 1, bias=False), Spliced(neck, size, 1), Norm(size)
        self.plin, self.pbn2 = Spliced(size, last, 1, bias=False), Norm(last)
        self.out = Spliced(last, OUTPUTS, 1)
        self.left = 1 + sum(l for l, _ in context)
        self.right = 1 + sum(r for _, r in context)

    def forward(self, x):
        wanted = (x.shape[1] + 2) // 3
        x = torch.cat([x[:, :1].expand(-1, self.left, -1), x, x[:, -1:].expand(-1, self.right + 2, -1)], 1)
        with torch.autocast(x.device.type, enabled=False):  # the features' range is too large for bfloat16
            h = self.lda(x.float(), [-1, 0, 1])
        first, rate = 1 - self.left, 1
        h = self.bn1(F.relu(self.t1(h, [0])))
        for (left, right), narrow, widen, norm in zip(self.context, self.lins, self.affs, self.bns):
            if rate == 1 and (left or right) and left % 3 == 0 and right % 3 == 0:
                skip = -first % 3
                h, first, rate = h[:, skip::3], first + skip, 3
            z = widen(narrow(h, [-o for o in reversed(taps(left, rate))]), taps(right, rate))
            z = norm(F.relu(z))
            if self.noise and self.training:
                wobble = torch.rand(z.shape[0], 1, z.shape[2], device=z.device, dtype=z.dtype) * 2 - 1
                z = z * (1 + 2 * self.noise * wobble)
            h = SKIP * h[:, left // rate : left // rate + z.shape[1]] + z
            first += left
        z = self.pbn(F.relu(self.paff(self.pre(h, [0]), [0])))
        return self.out(self.pbn2(self.plin(z, [0])), [0])[:, :wanted]


def load(network, path):
    """Takes stored weights; a look to the right that they do not have starts at zero."""
    state = {name: value.float() for name, value in torch.load(path, map_location="cpu").items()}
    for name, own in network.state_dict().items():
        missing = own.shape[-1] - state[name].shape[-1] if own.dim() == 2 else 0
        if missing > 0:
            state[name] = F.pad(state[name], (0, missing))
    network.load_state_dict(state)
