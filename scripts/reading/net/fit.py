"""Fits the net of bot/reading/examples/net.ts and writes its file; see README.md for how to run it.

A word's vector begins as what a small open sentence model makes of the word alone, narrowed to SIZE numbers, and is tuned with the rest:
filters over three words in order, the most of each taken over a clause (Kim 2014, arXiv:1408.5882), then one sum for each answer. Each check
is fitted alone, as fit-weights.ts does. What its likelihoods are worth is told by messages that were not fitted on: each third in turn.
"""

import json
import re
import struct
import sys
import time
from pathlib import Path

import jax
import jax.numpy as jnp
import numpy as np
import optax
from encoder import Encoder

SIZE, FILTERS, LENGTH = 96, 192, 40
ROUNDS, BATCH, RATE, SHRINK = 8, 256, 2e-3, 1e-6
DROP, DROP_WORDS = 0.3, 0.1
# As LEANING, WORTH_ASKING and RIVALRY in bot/reading/examples.
LEANING, WORTH_ASKING, RIVALRY = -10.0, 1.5, 0.5
FOLDS = 3
# What seems less likely is not looked at.
LEAST = 0.01
# How much a check must be met before it leans otherwise than all.
TIMID = 4.0
SEED = 0
OUT = Path("knowledge/connection/reading/net.bin")

started = time.time()


def tell(*what):
    print(f"{time.time() - started:5.0f} s", *what, flush=True)


def read(path):
    return [json.loads(line) for line in path.read_text().splitlines()]


def with_zeros(word):
    return re.sub(r"\d+", "0", word)


def choose_words(rows, pieces, without):
    """Words of the examples, and the model's own whole words but for those left out; numbers that are rare stand as 0."""
    counts = {}
    for row in rows:
        for word in row["words"]:
            if word is not None:
                counts[word] = counts.get(word, 0) + 1
    plain = [word for word in counts if re.fullmatch(r"[a-z0-9'’?\-./]{1,30}", word)]
    own = [word for word in plain if counts[word] > 1 or not re.search(r"\d", word)]
    words = {*own, *(with_zeros(word) for word in plain), *(piece for piece in pieces if re.fullmatch(r"[a-z]{2,}", piece))}
    return sorted(words - without), counts


def narrowed(vectors, words, counts):
    """Along the directions in which the examples' own words differ most."""
    met = vectors[[i for i, word in enumerate(words) if counts.get(word, 0) > 1]]
    _, _, directions = np.linalg.svd(met - met.mean(0), full_matrices=False)
    narrow = (vectors - met.mean(0)) @ directions[:SIZE].T
    return (narrow / narrow.std() * 0.5).astype(np.float32)


class Answers:
    def __init__(self, rows):
        pairs = sorted({tuple(pair) for row in rows for pair in row["tells"]})
        self.names = [answer for _, answer in pairs]
        self.numbers = {answer: i for i, answer in enumerate(self.names)}
        keys = sorted({key for key, _ in pairs})
        self.group = np.array([keys.index(key) for key, _ in pairs])
        self.in_group = np.zeros((len(pairs), len(keys)), np.float32)
        self.in_group[np.arange(len(pairs)), self.group] = 1


class Words:
    def __init__(self, words):
        self.numbers = {word: i + 1 for i, word in enumerate(words)}

    def table(self, lists):
        """0: not known, and between clauses."""
        table = np.zeros((len(lists), LENGTH), np.int32)
        for row, words in zip(table, lists):
            own = [0 if word is None else self.number(word) for word in words[:LENGTH]]
            row[: len(own)] = own
        return table

    def number(self, word):
        return self.numbers.get(word) or self.numbers.get(with_zeros(word), 0)


def spoken(p, words, key=None):
    known = (words > 0).astype(jnp.float32)
    vectors = p["vectors"][words] * known[..., None]
    if key is not None:
        key, for_words = jax.random.split(key)
        vectors = vectors * jax.random.bernoulli(for_words, 1 - DROP_WORDS, words.shape)[..., None]
    edge = jnp.zeros_like(vectors[:, :1])
    before = jnp.concatenate([edge, vectors[:, :-1]], 1)
    after = jnp.concatenate([vectors[:, 1:], edge], 1)
    patterns = jnp.concatenate([before, vectors, after], -1) @ p["taps"] + p["tap_starts"]
    most = (jax.nn.relu(patterns) * known[..., None]).max(1)
    total = vectors.sum(1) / jnp.sqrt(known.sum(1, keepdims=True) + 1)
    both = jnp.concatenate([most, total], -1)
    if key is not None:
        both = both * jax.random.bernoulli(key, 1 - DROP, both.shape) / (1 - DROP)
    return both @ p["speaks"] + p["speak_starts"]


ask = jax.jit(spoken)


def ask_all(p, table):
    """So many at a time that it is compiled once."""
    padded = np.vstack([table, np.zeros((-len(table) % BATCH, LENGTH), np.int32)])
    heard = [np.asarray(ask(p, padded[i : i + BATCH])) for i in range(0, len(padded), BATCH)]
    return np.vstack(heard)[: len(table)]


def fit(rows, vectors, words, answers):
    """Gives the net's parts."""
    table = words.table([row["words"] for row in rows])
    told = np.zeros((len(rows), len(answers.names)), np.float32)
    for i, row in enumerate(rows):
        for _, answer in row["tells"]:
            told[i, answers.numbers[answer]] = 1
    counts = told @ answers.in_group
    told /= np.maximum(1, counts @ answers.in_group.T)
    weight = np.array([row["weight"] for row in rows], np.float32)[:, None]
    others = np.array([row["others"] for row in rows], np.float32)[:, None]
    weights = np.where(counts > 0, weight, weight * others).astype(np.float32)
    in_group = jnp.asarray(answers.in_group)

    def loss(p, own, told, weights, key):
        logits = spoken(p, own, key) + LEANING
        everything = jnp.log1p(jnp.exp(jnp.minimum(logits, 30)) @ in_group)
        size = sum((p[name] ** 2).sum() for name in p if name != "vectors")
        return ((everything - (told * logits) @ in_group) * weights).sum(1).mean() + SHRINK * size

    steps = len(rows) // BATCH
    adam = optax.adam(optax.cosine_decay_schedule(RATE, ROUNDS * steps))

    @jax.jit
    def step(p, state, own, told, weights, key):
        slope = jax.grad(loss)(p, own, told, weights, key)
        change, state = adam.update(slope, state, p)
        return optax.apply_updates(p, change), state

    random = np.random.RandomState(SEED)
    p = {
        "vectors": jnp.asarray(np.vstack([np.zeros((1, SIZE), np.float32), vectors])),
        "taps": jnp.asarray(random.randn(3 * SIZE, FILTERS).astype(np.float32) / np.sqrt(3 * SIZE)),
        "tap_starts": jnp.zeros(FILTERS),
        "speaks": jnp.asarray(random.randn(FILTERS + SIZE, len(answers.names)).astype(np.float32) * 0.01),
        "speak_starts": jnp.zeros(len(answers.names)),
    }
    state = adam.init(p)
    key = jax.random.PRNGKey(SEED)
    for number in range(ROUNDS):
        order = random.permutation(len(rows))
        for i in range(steps):
            own = order[i * BATCH : (i + 1) * BATCH]
            key, now = jax.random.split(key)
            p, state = step(p, state, table[own], told[own], weights[own], now)
        tell(f"round {number + 1} of {ROUNDS}")
    return {name: np.asarray(part) for name, part in p.items()}


def likeliest(message, heard, answers):
    """As bot/reading/examples/likely.ts takes marks and net together: answer, how likely it seems, of each check."""
    best = {}
    for run, own in zip(message["runs"], heard):
        odds = {}
        for answer, marked in run["speaks"].items():
            a = answers.numbers.get(answer)
            if a is not None and marked >= WORTH_ASKING:
                odds[a] = np.exp(min(30, (marked + own[a]) / 2 + LEANING))
        totals = {}
        for a, odd in odds.items():
            totals[answers.group[a]] = totals.get(answers.group[a], 0) + odd
        for a, odd in odds.items():
            best[a] = max(best.get(a, 0), odd / (1 + totals[answers.group[a]]))
    by_group = {}
    for a, probability in best.items():
        by_group.setdefault(answers.group[a], []).append((probability, a))
    for own in by_group.values():
        own.sort(reverse=True)
        rival = own[1][0] if len(own) > 1 else 0
        yield own[0][1], own[0][0] * (1 - RIVALRY * rival)


def sobered(seen, groups):
    """The slope, and for each check what is added, by Newton's steps; a check that is seldom met leans as all do."""
    check, seems, told = (np.array(column) for column in zip(*seen))
    slope, lean, own = 1.0, 0.0, np.zeros(groups)
    for _ in range(50):
        likely = 1 / (1 + np.exp(-(slope * seems + lean + own[check])))
        off, sway = likely - told, likely * (1 - likely)
        cross = (sway * seems).sum()
        bend = np.array([[(sway * seems**2).sum(), cross], [cross, sway.sum()]])
        step = np.linalg.solve(bend, [(off * seems).sum(), off.sum()])
        slope, lean = slope - step[0], lean - step[1]
        likely = 1 / (1 + np.exp(-(slope * seems + lean + own[check])))
        off, sway = likely - told, likely * (1 - likely)
        own -= (np.bincount(check, off, groups) + TIMID * own) / (np.bincount(check, sway, groups) + TIMID)
    return slope, own + lean


def in_steps(rows):
    """Each row in whole steps of its own, at most 127."""
    steps = np.maximum(np.abs(rows).max(1), 1e-9) / 127
    return np.round(rows / steps[:, None]).astype(np.int8), steps.astype("<f4")


def write(parts, words, answers, slope, leans):
    vectors, vector_steps = in_steps(parts["vectors"][1:])
    taps, tap_steps = in_steps(parts["taps"].T)
    speaks, speak_steps = in_steps(parts["speaks"].T)
    head = json.dumps(
        {"answers": answers.names, "words": words, "size": SIZE, "filters": FILTERS, "slope": round(float(slope), 4)},
        ensure_ascii=False,
        separators=(",", ":"),
    ).encode()
    head += b" " * (-len(head) % 4)
    wide = (vector_steps, tap_steps, speak_steps, parts["tap_starts"], parts["speak_starts"], leans[answers.group])
    narrow = (vectors, taps, speaks)
    body = [np.asarray(part, "<f4").tobytes() for part in wide] + [part.tobytes() for part in narrow]
    OUT.write_bytes(struct.pack("<I", len(head)) + head + b"".join(body))
    tell(f"{OUT}: {OUT.stat().st_size / 1e6:.2f} MB")


def compare(messages, parts, words, answers):
    """Of messages that the parts were not fitted on: check, log of the odds that an answer seems to have, whether it was told."""
    heard = ask_all(parts, words.table([run["words"] for message in messages for run in message["runs"]]))
    at = 0
    for message in messages:
        own = heard[at : at + len(message["runs"])]
        at += len(own)
        for a, seems in likeliest(message, own, answers):
            if seems >= LEAST:
                yield int(answers.group[a]), float(np.log(seems / max(1e-6, 1 - seems))), answers.names[a] in message["labels"]


def soberly_before(answers):
    """As the file has it: of a check that it does not know, as of most."""
    data = OUT.read_bytes()
    (length,) = struct.unpack_from("<I", data)
    head = json.loads(data[4 : 4 + length])
    names, filters = head["answers"], head["filters"]
    at = 4 + length + 4 * (len(head["words"]) + 2 * filters + 2 * len(names))
    before = dict(zip(names, np.frombuffer(data, "<f4", len(names), at)))
    leans = np.full(answers.in_group.shape[1], np.median(list(before.values())))
    for answer, lean in before.items():
        if answer in answers.numbers:
            leans[answers.group[answers.numbers[answer]]] = lean
    return head["slope"], leans


def soberly_anew(folder, rows, vectors, words, answers):
    parts = [fit([row for row in rows if row["fold"] != fold], vectors, words, answers) for fold in range(FOLDS)]
    messages = read(folder / "messages.jsonl")
    seen = [
        one
        for fold in range(FOLDS)
        for one in compare([own for own in messages if own["fold"] == fold], parts[fold], words, answers)
    ]
    slope, leans = sobered(seen, answers.in_group.shape[1])
    tell(f"{len(seen)} looked at; slope {slope:.2f}")
    return slope, leans


def main(model, folder, quick, without):
    rows = read(folder / "rows.jsonl")
    encoder = Encoder(model)
    names, counts = choose_words(rows, encoder.pieces(), without)
    vectors = narrowed(encoder.vectors(names), names, counts)
    tell(f"{len(names)} words, {len(rows)} runs")
    words, answers = Words(names), Answers(rows)
    whole = fit(rows, vectors, words, answers)
    slope, leans = soberly_before(answers) if quick else soberly_anew(folder, rows, vectors, words, answers)
    write(whole, names, answers, slope, leans)


def left_out(given):
    return set(Path(given[given.index("--without") + 1]).read_text().split()) if "--without" in given else set()


main(sys.argv[1], Path(sys.argv[2]), "--quick" in sys.argv, left_out(sys.argv))
