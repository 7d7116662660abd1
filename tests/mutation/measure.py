"""How many small changes of the program the tests notice; by hand, not part of the test run.

    python tests/mutation/measure.py                     # everything named in PLACES
    python tests/mutation/measure.py mirror --sample 50  # fifty changes of one place, always the same

Each change is made to the tree of one module alone: another comparison,
operator, number, truth, order of branches; one call of min for max; a
statement left out.  It runs in a process of its own that is forked after the
tests' libraries were loaded.  What no test notices is told with its line; it
is a hole in the tests, or a change that makes no difference.
"""

from __future__ import annotations

import argparse
import ast
import copy
import importlib
import os
import random
import signal
import sys
import time
from collections.abc import Iterator
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
PLACES: dict[str, tuple[tuple[str, ...], tuple[str, ...]]] = {
    "coaching": (
        ("handouts.coaching.loads", "handouts.coaching.strength", "handouts.coaching.timing"),
        ("tests/coaching", "tests/fitting/test_fit.py", "tests/fitting/test_fit_properties.py"),
    ),
    "mirror": (("handouts.mirror",), ("tests/mirror", "tests/fitting/test_sides.py", "tests/library/test_starter_texts.py", "tests/fuzz/test_properties.py")),
    "layout": (
        ("handouts.braille.layout", "handouts.braille.lines"),
        ("tests/braille/test_edges_of_lines.py", "tests/braille/test_layout.py", "tests/braille/test_worked_examples.py", "tests/braille/test_files.py", "tests/braille/test_layout_properties.py"),
    ),
}
# Seconds after which a change counts as noticed, since the tests never end.
PATIENCE = 240
_COMPARE = {
    ast.Lt: ast.LtE, ast.LtE: ast.Lt, ast.Gt: ast.GtE, ast.GtE: ast.Gt, ast.Eq: ast.NotEq, ast.NotEq: ast.Eq,
    ast.Is: ast.IsNot, ast.IsNot: ast.Is, ast.In: ast.NotIn, ast.NotIn: ast.In,
}  # fmt: skip
_OPERATE = {
    ast.Add: ast.Sub, ast.Sub: ast.Add, ast.Mult: ast.Add, ast.Div: ast.Mult, ast.FloorDiv: ast.Mult, ast.Mod: ast.Add,
    ast.BitAnd: ast.BitOr, ast.BitOr: ast.BitAnd,
}  # fmt: skip


def changes(tree: ast.Module) -> Iterator[tuple[ast.Module, int, str]]:
    """Every changed tree, with the line and what was changed."""
    annotations = {
        inner
        for node in ast.walk(tree)
        for part in (getattr(node, "annotation", None), getattr(node, "returns", None))
        if part is not None
        for inner in ast.walk(part)
    }
    for at, original in enumerate(list(ast.walk(tree))):
        if original in annotations:  # they are never evaluated
            continue
        for number in range(_kinds(original)):
            changed = copy.deepcopy(tree)
            node = _node(changed, at)
            before = ast.unparse(node)
            if _change(node, number):
                yield changed, getattr(original, "lineno", 0), f"{before[:60]!r} to {ast.unparse(node)[:60]!r}"


def _node(tree: ast.Module, at: int) -> ast.AST:
    return next(node for number, node in enumerate(ast.walk(tree)) if number == at)


def _kinds(node: ast.AST) -> int:
    if isinstance(node, ast.Compare):
        return len(node.ops)
    if isinstance(node, ast.Constant) and isinstance(node.value, int) and not isinstance(node.value, bool):
        return 1
    return int(isinstance(node, ast.BinOp | ast.BoolOp | ast.IfExp | ast.UnaryOp | ast.Call | ast.If | ast.AugAssign | ast.Continue)
               or (isinstance(node, ast.Constant) and isinstance(node.value, bool)))  # fmt: skip


def _change(node: ast.AST, number: int) -> bool:
    match node:
        case ast.Compare():
            node.ops[number] = _COMPARE[type(node.ops[number])]()
        case ast.BinOp(op=op) | ast.AugAssign(op=op) if type(op) in _OPERATE:
            node.op = _OPERATE[type(op)]()
        case ast.BoolOp(op=op):
            node.op = ast.Or() if isinstance(op, ast.And) else ast.And()
        case ast.IfExp():
            node.body, node.orelse = node.orelse, node.body
        case ast.UnaryOp(op=ast.USub()):
            node.op = ast.UAdd()
        case ast.UnaryOp(op=ast.Not(), operand=operand):
            node.operand = ast.UnaryOp(ast.Not(), operand)
        case ast.Call(func=ast.Name(id="min" | "max" as name) as func):
            func.id = "max" if name == "min" else "min"
        case ast.Call(func=ast.Name(id="any" | "all" as name) as func):
            func.id = "all" if name == "any" else "any"
        case ast.If():
            node.test = ast.UnaryOp(ast.Not(), node.test)
        case ast.Constant(value=bool() as value):
            node.value = not value
        case ast.Constant(value=int() as value):
            node.value = value + 1
        case _:
            return False
    ast.fix_missing_locations(node)
    return True


def noticed(name: str, tree: ast.Module, tests: tuple[str, ...]) -> bool:
    """Whether the tests fail, never end, or cannot begin with a changed module."""
    child = os.fork()
    if child == 0:
        os.setsid()
        quiet = os.open(os.devnull, os.O_WRONLY)
        os.dup2(quiet, 1)
        os.dup2(quiet, 2)
        os._exit(_tested(name, tree, tests))
    until = time.monotonic() + PATIENCE
    while time.monotonic() < until:
        done, status = os.waitpid(child, os.WNOHANG)
        if done:
            return status != 0
        time.sleep(0.02)
    os.killpg(child, signal.SIGKILL)
    os.waitpid(child, 0)
    return True


def _tested(name: str, tree: ast.Module, tests: tuple[str, ...]) -> int:
    try:
        import pytest

        # Nothing that uses the module has been loaded yet, so that all of it
        # takes its names from the changed one.
        module = importlib.import_module(name)
        exec(compile(tree, module.__file__ or name, "exec"), module.__dict__)
        return int(pytest.main(["-x", "-q", "-p", "no:cacheprovider", "--assert=plain", *tests]) != 0)
    except BaseException:
        return 1


def main() -> int:
    parser = argparse.ArgumentParser(description=(__doc__ or "").split("\n")[0])
    parser.add_argument("places", nargs="*", default=list(PLACES), help=f"among: {', '.join(PLACES)}")
    parser.add_argument("--sample", type=int, default=0, help="only so many changes of each place")
    asked = parser.parse_args()
    for library in ("click", "jinja2", "markdown", "pydantic", "yaml"):
        importlib.import_module(library)
    import hypothesis

    hypothesis.settings.register_profile("mutation", database=None, derandomize=True, deadline=None,
                                         suppress_health_check=list(hypothesis.HealthCheck))  # fmt: skip
    hypothesis.settings.load_profile("mutation")
    for place in asked.places:
        modules, tests = PLACES[place]
        trees = {name: ast.parse((ROOT / (name.replace(".", "/") + ".py")).read_text("utf-8")) for name in modules}
        if any(noticed(name, tree, tests) for name, tree in trees.items()):
            print(f"{place}: the tests fail without a change.")
            return 1
        todo = [(name, *change) for name, tree in trees.items() for change in changes(tree)]
        if asked.sample:
            todo = random.Random(20290108).sample(todo, min(asked.sample, len(todo)))
        missed = 0
        for name, tree, line, what in todo:
            if not noticed(name, tree, tests):
                missed += 1
                print(f"{name.replace('.', '/')}.py:{line}: not noticed: {what}", flush=True)
        print(f"{place}: {len(todo) - missed} of {len(todo)} changes noticed, {100 * (1 - missed / len(todo)):.0f} per cent.", flush=True)
    return 0


if __name__ == "__main__":
    sys.path.insert(0, str(ROOT))
    os.chdir(ROOT)
    sys.exit(main())
