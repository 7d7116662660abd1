"""Coverage-guided fuzzing of every door, by hand and at night; not part of the test run.

    python tests/fuzz/guided.py                      # 1,000,000 inputs over all doors
    python tests/fuzz/guided.py --inputs 20000 --only mirror --only yaml
    python tests/fuzz/guided.py --again findings/mirror-1a2b3c4d

Needs the package `atheris` (Linux and macOS).  Each door runs in a process of
its own, so that coverage leads each alone.  A finding is written to the folder
of findings as the input itself, with its traceback beside it; the run goes on.
Exit status: 0 none; 1 findings, a door that hung, or one that died.
"""

from __future__ import annotations

import argparse
import atexit
import hashlib
import json
import os
import re
import signal
import subprocess
import sys
import tempfile
import time
import traceback
from pathlib import Path

HERE = Path(__file__).resolve()
ROOT = HERE.parents[2]
# Seconds that one input may take before the door counts as hanging.
PATIENCE = 20


def main() -> int:
    asked = _asked()
    if asked.door:
        return _one_door(asked.door, asked.inputs, asked.findings, asked.corpus)
    from targets import TARGETS, run, target

    if asked.again:
        path = Path(asked.again)
        run(target(path.name.rpartition("-")[0].replace("_", " ")), path.read_bytes())
        return 0
    chosen = [one for one in TARGETS if not asked.only or one.name in asked.only]
    shares = sum(one.share for one in chosen)
    total = found = 0
    bad = False
    for one in chosen:
        inputs = -(-asked.inputs * one.share // shares)
        begun = time.monotonic()
        words = [sys.executable, str(HERE), "--door", one.name, "--inputs", str(inputs),
                 "--findings", str(asked.findings), "--corpus", str(asked.corpus)]  # fmt: skip
        ended = subprocess.run(words, cwd=ROOT, capture_output=True, text=True)
        try:
            told = json.loads(ended.stdout.strip().split("\n")[-1])
        except ValueError:
            told = {"inputs": 0, "findings": 0}
        total, found = total + told["inputs"], found + told["findings"]
        state = "" if ended.returncode == 0 else f"; ended badly ({ended.returncode}): {ended.stderr[-2000:]}"
        bad = bad or bool(state) or bool(told["findings"])
        seconds = time.monotonic() - begun
        print(f"{one.name}: {told['inputs']:,} inputs, {told['findings']} findings, {seconds:.0f} s{state}", flush=True)
    print(f"All doors: {total:,} inputs, {found} findings.")
    return int(bad)


def _asked() -> argparse.Namespace:
    parser = argparse.ArgumentParser(description=(__doc__ or "").split("\n")[0])
    parser.add_argument("--inputs", type=int, default=1_000_000, help="over all doors (default: %(default)s)")
    parser.add_argument("--only", action="append", help="a door; may be given more than once")
    parser.add_argument("--findings", type=Path, default=Path(tempfile.gettempdir()) / "handouts-findings")
    parser.add_argument("--corpus", type=Path, default=Path(tempfile.gettempdir()) / "handouts-corpus")
    parser.add_argument("--again", help="run one finding again")
    parser.add_argument("--door", help=argparse.SUPPRESS)
    return parser.parse_args()


def _one_door(name: str, inputs: int, findings: Path, corpus: Path) -> int:
    import atheris

    with atheris.instrument_imports(include=["handouts"]):
        import targets

    door = targets.target(name)
    safe = name.replace(" ", "_")
    findings.mkdir(parents=True, exist_ok=True)
    own_corpus = corpus / safe
    own_corpus.mkdir(parents=True, exist_ok=True)
    for seed in door.seeds():
        (own_corpus / hashlib.sha256(seed).hexdigest()[:16]).write_bytes(seed)
    words = corpus / f"{safe}.dict"
    words.write_text("".join(f'"{_escaped(word)}"\n' for word in door.words), "ascii")
    tried = 0
    seen: set[str] = set()

    def one_input(data: bytes) -> None:
        nonlocal tried
        tried += 1
        try:
            targets.run(door, data)
        except Exception as problem:
            place = _place(problem)
            if place in seen:
                return
            seen.add(place)
            path = findings / f"{safe}-{hashlib.sha256(data).hexdigest()[:8]}"
            path.write_bytes(data)
            path.with_suffix(".txt").write_text(f"{place}\n{traceback.format_exc()}", "utf-8", "backslashreplace")

    # libFuzzer ends the process itself, so that what was done is told at the
    # exit, when its own alarm clock has no one to wake any more.
    def tell() -> None:
        signal.signal(signal.SIGALRM, signal.SIG_IGN)
        print(json.dumps({"inputs": tried, "findings": len(seen)}), flush=True)

    atexit.register(tell)
    settings = [
        f"-atheris_runs={inputs}", f"-max_len={door.longest}", f"-timeout={PATIENCE}", "-rss_limit_mb=3000",
        f"-dict={words}", f"-artifact_prefix={findings}/{safe}-", "-print_final_stats=1", "-seed=20290108",
    ]  # fmt: skip
    # The first word is a name that libFuzzer only shows.
    atheris.Setup([sys.argv[0], *settings, str(own_corpus)], one_input)
    atheris.Fuzz()
    return 0


def _escaped(word: str) -> str:
    return "".join(chr(byte) if 32 <= byte < 127 and byte not in b'"\\' else f"\\x{byte:02x}" for byte in word.encode())


def _place(problem: BaseException) -> str:
    """The kind of a finding and where it arose, so that each is kept once."""
    if type(problem).__name__ == "Finding":
        return "Finding " + re.split("['\"\\[{0-9]", str(problem))[0]
    trace, place = problem.__traceback__, ""
    while trace is not None:
        if f"{os.sep}handouts{os.sep}" in trace.tb_frame.f_code.co_filename:
            place = f"{trace.tb_frame.f_code.co_filename}:{trace.tb_lineno}"
        trace = trace.tb_next
    return f"{type(problem).__name__} {place}"


if __name__ == "__main__":
    sys.path.insert(0, str(ROOT))
    sys.exit(main())
