"""The graph of the close reading: it works as the published descriptions say, in whole numbers too, and is of the open format alone."""

import importlib.util
import math
from collections import Counter
from pathlib import Path

import numpy as np
import onnx
import onnxruntime
import pytest
from onnx.reference import ReferenceEvaluator

from handouts.wording import rereading
from handouts.wording.searching import LEARNT
from handouts.wording.stored import load

HERE = Path(__file__).parent
spec = importlib.util.spec_from_file_location("wording_close_graph", HERE / "close_graph.py")
close_graph = importlib.util.module_from_spec(spec)
spec.loader.exec_module(close_graph)

HEADS, LAYERS, WIDTH = 4, 2, 16
SHIPPED = LEARNT / "en.close.onnx"


def small(random, width, layers=2, kinds=3):
    """Numbers at random for a small transformer."""
    of = lambda *shape: random.normal(0, 0.5, shape).astype(np.float32)  # noqa: E731
    learnt = {"places": of(9, width), "norm stretch": of(width), "norm shift": of(width), "out": of(width, kinds), "out bias": of(kinds)}
    for layer in range(layers):
        for name, inward, outward in (("asks", width, 3 * width), ("mixes", width, width), ("widens", width, 4 * width), ("narrows", 4 * width, width)):
            learnt |= {f"{layer} {name}": of(inward, outward), f"{layer} {name} bias": of(outward)}
        for name in ("norm mixed", "norm"):
            learnt |= {f"{layer} {name} stretch": of(width), f"{layer} {name} shift": of(width)}
    return learnt


def word_by_word(learnt, rows, layers):
    """The formulas of Vaswani and others (2017, sections 3.1 to 3.3), with the norms after each part and the GELU
    x/2 (1 + erf(x / sqrt 2)) of "BERT", in plain loops."""
    width = len(rows[0])
    size = width // HEADS

    def norm(name, x):
        middle = sum(x) / width
        deviation = math.sqrt(sum((one - middle) ** 2 for one in x) / width + 1e-12)
        return np.array([(one - middle) / deviation for one in x]) * learnt[f"{name} stretch"] + learnt[f"{name} shift"]

    def through(name, x):
        return np.array(x) @ learnt[name].astype(float) + learnt[f"{name} bias"]

    x = [norm("norm", row + learnt["places"][place]) for place, row in enumerate(rows)]
    for layer in range(layers):
        asks = [through(f"{layer} asks", row).reshape(3, HEADS, size) for row in x]
        mixed = []
        for query, _, _ in asks:
            heads = []
            for head in range(HEADS):
                heed = [math.exp(float(query[head] @ key[head]) / math.sqrt(size)) for _, key, _ in asks]
                heads += list(sum(one / sum(heed) * value[head] for one, (_, _, value) in zip(heed, asks, strict=True)))
            mixed.append(heads)
        x = [norm(f"{layer} norm mixed", row + through(f"{layer} mixes", heads)) for row, heads in zip(x, mixed, strict=True)]
        wide = [[one / 2 * (1 + math.erf(one / math.sqrt(2))) for one in through(f"{layer} widens", row)] for row in x]
        x = [norm(f"{layer} norm", row + through(f"{layer} narrows", one)) for row, one in zip(x, wide, strict=True)]
    return np.array([through("out", row) for row in x])


@pytest.fixture(scope="module")
def learnt():
    return small(np.random.default_rng(3), WIDTH)


@pytest.fixture(scope="module")
def given():
    """Two stretches, the second shorter."""
    inside = np.ones((2, 7), bool)
    inside[1, 4:] = False
    return {"rows": np.random.default_rng(4).normal(size=(2, 7, WIDTH)).astype(np.float32), "inside": inside}


def by_formulas(learnt, given):
    """How likely each word is what, each stretch by itself: the softmax of what the formulas say."""
    found = []
    for rows, inside in zip(given["rows"], given["inside"], strict=True):
        odds = np.exp(word_by_word(learnt, rows[inside], LAYERS))
        found.append(odds / odds.sum(axis=1, keepdims=True))
    return found


def worked_out(model, given):
    return onnxruntime.InferenceSession(model.SerializeToString()).run(["likely"], given)[0]


def test_the_graph_gives_what_its_formulas_give_word_by_word(learnt, given):
    likely = worked_out(close_graph.written(learnt, LAYERS, HEADS), given)
    for found, inside, expected in zip(likely, given["inside"], by_formulas(learnt, given), strict=True):
        # What stands beyond the end of the shorter one changes nothing.
        assert found[inside] == pytest.approx(expected, abs=0.001)


def test_whole_numbers_give_nearly_the_same(learnt, given):
    met = close_graph.looked_at(learnt, LAYERS, HEADS, [given.values()])
    model = close_graph.written(learnt, LAYERS, HEADS, met)
    likely = worked_out(model, given)
    for found, inside, expected in zip(likely, given["inside"], by_formulas(learnt, given), strict=True):
        assert found[inside] == pytest.approx(expected, abs=0.01)
    # They are not the same: the numbers were rounded.
    assert np.abs(likely - worked_out(close_graph.written(learnt, LAYERS, HEADS), given)).max() > 1e-5
    every = Counter(node.op_type for node in model.graph.node)
    assert every["QuantizeLinear"] == every["MatMulInteger"] == LAYERS * len(close_graph.PRODUCTS)


def test_few_numbers_are_cut_off_and_nought_stays_nought():
    came = np.random.default_rng(5).normal(0, 1, (100_000, 20))
    found = close_graph.Range.of(came)
    low, high = -found.zero * found.scale, (255 - found.zero) * found.scale
    # Of a normal distribution, 1 in 100,000 lies beyond 4.265 deviations: a table of its quantiles.
    assert (low, high) == (pytest.approx(-4.265, abs=0.15), pytest.approx(4.265, abs=0.15))
    assert 0 < np.mean((came < low) | (came > high)) < 0.00004
    # Numbers that are all above nought, as after a bend, have it as their least.
    assert close_graph.Range.of(np.abs(came)).zero == 0


def test_a_column_that_is_much_larger_is_evened():
    """SmoothQuant, equation 4: the larger what comes in and the smaller the matrix there, the more is moved."""
    random = np.random.default_rng(6)
    came = random.normal(0, 1, (300_000, 4)) * [1, 1, 30, 1]
    found = close_graph.range_of("0 widens", came, np.array([[1.0], [4.0], [1.0], [1.0]]))
    evened = found.evened / found.evened[0]
    assert evened == pytest.approx([1, 4**-0.3, 30**0.7, 1], rel=0.1)
    assert found.scale < close_graph.Range.of(came).scale / 4
    assert close_graph.range_of("0 asks", came, np.ones((4, 1))).evened is None


@pytest.fixture(scope="module")
def shipped():
    return onnx.load(SHIPPED)


def test_what_is_shipped_is_a_graph_of_the_standard_alone(shipped):
    """The checker of the format's own library, and no operator of a single engine."""
    onnx.checker.check_model(shipped, full_check=True)
    assert {node.domain for node in shipped.graph.node} == {""}
    assert [(opset.domain, opset.version) for opset in shipped.opset_import] == [("", 20)]


def test_what_is_shipped_belongs_to_the_rows_of_words(shipped):
    told = {prop.key: prop.value for prop in shipped.metadata_props}
    assert told["learnt from"] == load(LEARNT / "en.close.npy")["learnt from"].tobytes().decode()


def test_no_product_leaves_sixteen_bits(shipped):
    """Processors without instructions of their own for it (AVX2, as its manual says of VPMADDUBSW) add two products of
    a number to 255 and one of a matrix in 16 bits, and what does not fit is cut off."""
    matrices = [onnx.numpy_helper.to_array(one) for one in shipped.graph.initializer if one.data_type == onnx.TensorProto.INT8]
    most = max(int(np.abs(matrix.astype(int)).max()) for matrix in matrices)
    assert most == close_graph.WHOLE
    assert 2 * 255 * most <= 2**15 - 1


def test_another_engine_comes_to_the_same(shipped):
    """ONNX's own reference evaluator, written in Python from the standard, against the engine that the program uses."""
    stretches = [
        rereading.Stretch(tuple(lead.split()), tuple(words.split()))
        for lead, words in (("", "hold the bell like this ."), ("stand tall .", "breathe out ."), ("face me .", "turn that way"))
    ]
    rows, inside = rereading.Rows(load(LEARNT / "en.close.npy")).of(stretches)
    (expected,) = ReferenceEvaluator(shipped).run(["likely"], {"rows": rows, "inside": inside})
    for found, of_stretch, stretch in zip(rereading.learnt().likely(stretches), expected, stretches, strict=True):
        assert found == pytest.approx(of_stretch[stretch.place : stretch.place + len(stretch.words)], abs=0.02)
