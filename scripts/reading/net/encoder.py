"""The small open sentence model all-MiniLM-L6-v2: a text in, the mean of its last layer out. See README.md for where it comes from."""

import hashlib
import math
from pathlib import Path

import jax
import jax.numpy as jnp
import numpy as np
from safetensors.numpy import load_file
from tokenizers import Tokenizer

# Of the files as their makers published them (README.md).
WEIGHTS_SHA256 = "53aa51172d142c89d9012cce15ae4d6cc0ca6895895114379cacb4fab128d9db"
LAYERS, HEADS, WIDTH = 6, 12, 384
LENGTHS = (4, 6, 8, 12, 16, 24, 32)
TOKENS_AT_ONCE = 2048


def _norm(p, x, name):
    centred = x - x.mean(-1, keepdims=True)
    spread = (centred**2).mean(-1, keepdims=True)
    return centred * jax.lax.rsqrt(spread + 1e-12) * p[name + ".weight"] + p[name + ".bias"]


def _linear(p, x, name):
    return x @ p[name + ".weight"].T + p[name + ".bias"]


def _attend(p, x, bias, layer):
    batch, length, _ = x.shape
    query, key, value = (
        _linear(p, x, f"{layer}attention.self.{name}").reshape(batch, length, HEADS, -1).transpose(0, 2, 1, 3)
        for name in ("query", "key", "value")
    )
    share = jax.nn.softmax(query @ key.transpose(0, 1, 3, 2) / math.sqrt(WIDTH // HEADS) + bias, -1)
    return (share @ value).transpose(0, 2, 1, 3).reshape(batch, length, WIDTH)


def _encode(p, ids, mask):
    x = p["embeddings.word_embeddings.weight"][ids]
    x = x + p["embeddings.position_embeddings.weight"][: ids.shape[1]] + p["embeddings.token_type_embeddings.weight"][0]
    x = _norm(p, x, "embeddings.LayerNorm")
    bias = (1 - mask)[:, None, None, :] * -1e9
    for i in range(LAYERS):
        layer = f"encoder.layer.{i}."
        attended = _linear(p, _attend(p, x, bias, layer), layer + "attention.output.dense")
        x = _norm(p, attended + x, layer + "attention.output.LayerNorm")
        inner = jax.nn.gelu(_linear(p, x, layer + "intermediate.dense"), approximate=False)
        x = _norm(p, _linear(p, inner, layer + "output.dense") + x, layer + "output.LayerNorm")
    return (x * mask[..., None]).sum(1) / mask.sum(1, keepdims=True)


class Encoder:
    def __init__(self, folder):
        """folder: with model.safetensors and tokenizer.json"""
        weights = Path(folder) / "model.safetensors"
        if hashlib.sha256(weights.read_bytes()).hexdigest() != WEIGHTS_SHA256:
            raise ValueError(f"{weights} is not the model that README.md names")
        self._parts = {name: jnp.asarray(v) for name, v in load_file(weights).items() if v.dtype == np.float32}
        self._tokens = Tokenizer.from_file(str(Path(folder) / "tokenizer.json"))
        self._tokens.no_padding()
        self._tokens.no_truncation()
        self._run = jax.jit(_encode)

    def pieces(self):
        """Every word and piece of a word that the model knows."""
        return list(self._tokens.get_vocab())

    def vectors(self, words):
        """One row of WIDTH numbers for each word."""
        out = np.zeros((len(words), WIDTH), np.float32)
        ids = [encoded.ids[: LENGTHS[-1]] for encoded in self._tokens.encode_batch(list(words))]
        for shorter, length in zip((0, *LENGTHS), LENGTHS):
            of_length = [i for i, own in enumerate(ids) if shorter < len(own) <= length]
            count = TOKENS_AT_ONCE // length
            for start in range(0, len(of_length), count):
                part = of_length[start : start + count]
                table = np.zeros((count, length), np.int32)
                mask = np.zeros((count, length), np.float32)
                mask[:, 0] = 1
                for row, i in enumerate(part):
                    table[row, : len(ids[i])] = ids[i]
                    mask[row, : len(ids[i])] = 1
                out[part] = np.asarray(self._run(self._parts, table, mask))[: len(part)]
        return out
