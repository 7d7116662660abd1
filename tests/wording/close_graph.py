"""Writes the close reading as a graph of the open format ONNX, for the engine that `handouts/wording/rereading.py` runs it with.

`learn_closely.py` learns the numbers.  Here they become whole numbers, so that
the graph is small and runs four times as fast: Jacob and others, "Quantization
and Training of Neural Networks for Efficient Integer-Arithmetic-Only
Inference", CVPR 2018.  Which numbers come into each product is looked at on
some of what was learnt from, and what few of them exceed is cut off.  The
graph has operators of the standard alone (ONNX, operator set 20); the
transformer is that of Vaswani and others, "Attention Is All You Need", 2017,
with the layers of Devlin and others, "BERT", 2019.
"""

import math
from typing import NamedTuple

import numpy as np
import onnxruntime
from onnx import TensorProto, checker, helper, numpy_helper

PRODUCTS = ("asks", "mixes", "widens", "narrows")
"""The products of a layer, by the matrix that each is with."""
SCARCE = 0.00001
"""The share of the numbers that come into a product that may be cut off at either end."""
WHOLE = 63
"""The greatest whole number of a matrix.

Not 127: processors of before 2019 add two products in 16 bits, which two of
255 times 127 do not fit, and would read otherwise than newer ones.
"""
EVENED = 0.7
"""How far numbers that come into "widens" are made alike in size, a column each, by what the matrix takes on.

Some columns there are twenty times as large as the others, which would be left
few whole numbers: Xiao and others, "SmoothQuant", ICML 2023, equation 4.
"""


class Range(NamedTuple):
    """What comes into a product: a whole number from 0 to 255, less `zero`, times `scale`, times its column's `evened` if there is one."""

    scale: float
    zero: int
    evened: np.ndarray | None

    @classmethod
    def of(cls, numbers, evened=None):
        """numbers: (words, width), some that come in."""
        low, high = np.quantile(numbers if evened is None else numbers / evened, [SCARCE, 1 - SCARCE])
        scale = (max(high, 0) - min(low, 0)) / 255
        return cls(float(scale), round(-min(low, 0) / scale), evened)


class Graph:
    """An ONNX graph while it is written: each method adds operators and gives the name of what comes out."""

    def __init__(self):
        self.nodes, self.constants = [], {}

    def constant(self, name, array, kind=np.float32):
        self.constants[name] = numpy_helper.from_array(np.asarray(array, kind, order="C"), name)
        return name

    def add(self, operator, inputs, name, **told):
        self.nodes.append(helper.make_node(operator, inputs, [name], name, **told))
        return name

    def in_whole_numbers(self, x, name, matrix, scale, zero):
        """x times a constant matrix, both in whole numbers: x from 0 to 255, less `zero`, times `scale`, and the matrix with a scale for each column.

        Written out, as an engine would make it of numbers that are rounded and
        told again; so that it need not, which takes longer than a short text.
        """
        zero = self.constant(f"{x} zero", zero, np.uint8)
        whole = self.add("QuantizeLinear", [x, self.constant(f"{x} scale", scale), zero], f"{x} whole")
        scales = np.maximum(np.abs(matrix).max(axis=0), 1e-9) / WHOLE
        matrix = self.constant(name, np.round(matrix / scales), np.int8)
        product = self.add("MatMulInteger", [whole, matrix, zero], f"{name} whole")
        product = self.add("Cast", [product], f"{name} cast", to=TensorProto.FLOAT)
        return self.add("Mul", [product, self.constant(f"{name} scale", scales * scale)], f"{name} product")

    def model(self, outputs, told):
        inputs = [
            helper.make_tensor_value_info("rows", TensorProto.FLOAT, ["stretches", "words", "width"]),
            helper.make_tensor_value_info("inside", TensorProto.BOOL, ["stretches", "words"]),
        ]
        given = [helper.make_tensor_value_info(name, TensorProto.FLOAT, ["stretches", "words", None]) for name in outputs]
        graph = helper.make_graph(self.nodes, "close reading", inputs, given, list(self.constants.values()))
        model = helper.make_model(graph, opset_imports=[helper.make_opsetid("", 20)], ir_version=10)
        helper.set_model_props(model, told)
        checker.check_model(model)
        return model


def written(learnt, layers, heads, met=None, told=None):
    """The ONNX model: rows (stretches, words, width) and which of them are inside (stretches, words) to how likely each word is no fault, then each kind.

    learnt: the arrays by name, as `learn_closely.Learner` has them.
    met: what `looked_at` found, for whole numbers; None for a graph of the
        numbers as they are, which also gives what comes into each product.
    told: words that the file carries, by name.
    """
    graph = Graph()
    width = learnt["norm shift"].shape[0]
    given = []

    def through(x, name):
        """x times a matrix, plus its bias."""
        matrix, bias = learnt[name], graph.constant(f"{name} bias", learnt[f"{name} bias"])
        if met is None:
            given.append(x)
            product = graph.add("MatMul", [x, graph.constant(name, matrix)], f"{name} product")
        else:
            range_ = met[name]
            if range_.evened is not None:
                matrix = matrix * range_.evened[:, None]
                x = graph.add("Mul", [x, graph.constant(f"{name} evens", 1 / range_.evened)], f"{name} evened")
            product = graph.in_whole_numbers(x, name, matrix, range_.scale, range_.zero)
        return graph.add("Add", [product, bias], f"{name} out")

    def normed(x, name):
        weights = [graph.constant(f"{name} {part}", learnt[f"{name} {part}"]) for part in ("stretch", "shift")]
        return graph.add("LayerNormalization", [x, *weights], f"{name} out", epsilon=1e-12)

    def by_head(x, order):
        parted = graph.add("Reshape", [x, by_heads], f"{x} parted")
        return graph.add("Transpose", [parted], f"{x} by head", perm=order)

    by_heads = graph.constant("by heads", [0, 0, heads, width // heads], np.int64)
    together = graph.constant("together", [0, 0, width], np.int64)
    shrinks = graph.constant("shrinks", 1 / math.sqrt(width // heads))
    nothing, far = graph.constant("nothing", 0), graph.constant("far", -1e9)
    begin, across = graph.constant("begin", [0], np.int64), graph.constant("across", [1, 2], np.int64)
    longest = graph.add("Shape", ["rows"], "longest", start=1, end=2)
    places = graph.add("Slice", [graph.constant("places", learnt["places"]), begin, longest], "places here")
    beyond = graph.add("Unsqueeze", [graph.add("Where", ["inside", nothing, far], "outside"), across], "beyond")

    x = normed(graph.add("Add", ["rows", places], "placed"), "norm")
    for layer in range(layers):
        asks = through(x, f"{layer} asks")
        parts = [f"{layer} {part}" for part in ("query", "key", "value")]
        graph.nodes.append(helper.make_node("Split", [asks], parts, f"{layer} parts", axis=2, num_outputs=3))
        query, key, value = map(by_head, parts, ([0, 2, 1, 3], [0, 2, 3, 1], [0, 2, 1, 3]))
        alike = graph.add("Mul", [graph.add("MatMul", [query, key], f"{layer} alike"), shrinks], f"{layer} alike, shrunk")
        heed = graph.add("Softmax", [graph.add("Add", [alike, beyond], f"{layer} alike inside")], f"{layer} heed", axis=-1)
        mixed = graph.add("Transpose", [graph.add("MatMul", [heed, value], f"{layer} heeded")], f"{layer} by word", perm=[0, 2, 1, 3])
        mixed = through(graph.add("Reshape", [mixed, together], f"{layer} mixed"), f"{layer} mixes")
        x = normed(graph.add("Add", [x, mixed], f"{layer} with mixed"), f"{layer} norm mixed")
        wide = graph.add("Gelu", [through(x, f"{layer} widens")], f"{layer} bent", approximate="tanh")
        x = normed(graph.add("Add", [x, through(wide, f"{layer} narrows")], f"{layer} with wide"), f"{layer} norm")
    logits = graph.add("MatMul", [x, graph.constant("out", learnt["out"])], "out product")
    logits = graph.add("Add", [logits, graph.constant("out bias", learnt["out bias"])], "logits")
    graph.add("Softmax", [logits], "likely", axis=-1)
    return graph.model(["likely", *given], told or {})


def looked_at(learnt, layers, heads, batches):
    """The range of what comes into each product, from some batches of stretches: `rows` and `inside`, as the graph takes them."""
    engine = onnxruntime.InferenceSession(written(learnt, layers, heads).SerializeToString())
    names = [f"{layer} {name}" for layer in range(layers) for name in PRODUCTS]
    numbers = {name: [] for name in names}
    for rows, inside in batches:
        _, *given = engine.run(None, {"rows": rows, "inside": inside})
        for name, came in zip(names, given, strict=True):
            numbers[name].append(came[inside])
    return {name: range_of(name, np.concatenate(came), learnt[name]) for name, came in numbers.items()}


def range_of(name, came, matrix):
    """The range of what comes into the product with a matrix (inward, outward).

    came: (words, inward), some that came in.
    """
    if not name.endswith("widens"):
        return Range.of(came)
    most = np.quantile(np.abs(came), 1 - SCARCE, axis=0) ** EVENED / np.abs(matrix).max(axis=1) ** (1 - EVENED)
    return Range.of(came, (most / np.exp(np.log(most).mean())).astype(np.float32))
