"""Who makes the sheets: this process, several processes, or other machines.

One small seam: `Workers.run` takes steps, some of which have a task that
carries all it needs, and gives each step back with its result, in order.  A
worker needs no shared disk; it returns bytes, and the one process that asked
writes them.
"""

from __future__ import annotations

import contextlib
import multiprocessing
import os
import re
import signal
import sys
import time
import traceback
from collections import deque
from collections.abc import Iterator
from dataclasses import dataclass
from multiprocessing.connection import Connection
from multiprocessing.connection import wait as wait_for_pipes
from multiprocessing.process import BaseProcess
from typing import Any, Generic, Protocol, TypeVar

from handouts import __version__
from handouts.errors import HandoutsError, MissingLibrary, RenderError
from handouts.forms import FORMS, Look, Rendered
from handouts.handout import Handout

# No sheet takes near as long; a worker that hangs costs one sheet, not the run.
SECONDS_A_SHEET = 300
# Tasks on their way for each worker: enough to keep it busy, few enough that
# memory stays flat however many clients there are.
_AHEAD = 6
# Seconds that a process has to end by itself.
_PATIENCE = 3


@dataclass(frozen=True)
class Task:
    """One sheet in one form, with everything that a worker needs for it."""

    form: str
    handout: Handout
    settings: Any
    look: Look


@dataclass(frozen=True)
class Result:
    """What came of a task: the finished file, or why there is none."""

    rendered: Rendered | None
    failure: str
    seconds: float


Step = TypeVar("Step")


class Workers(Protocol):
    """Makes sheets."""

    def get_ready(self) -> None:
        """Called before there is a task: load meanwhile what takes long."""

    def run(self, steps: Iterator[tuple[Step, Task | None]]) -> Iterator[tuple[Step, Result | None]]:
        """Each step in order, with what came of its task; None where it has none."""

    def close(self) -> None:
        """Let the workers go; nothing runs afterwards."""


def work(task: Task) -> Result:
    """Make one sheet, here and now; whatever goes wrong comes back as a failure.

    A fault of the program costs one sheet, and its traceback is shown.
    """
    begun = time.perf_counter()
    try:
        rendered = FORMS[task.form].render(task.handout, task.settings, task.look)
    except (MissingLibrary, RenderError) as problem:
        return Result(None, str(problem), time.perf_counter() - begun)
    except Exception as problem:
        traceback.print_exc()
        failure = f"this is a fault of the program ({type(problem).__name__}); please report the lines above"
        return Result(None, failure, time.perf_counter() - begun)
    return Result(rendered, "", time.perf_counter() - begun)


class InThisProcess:
    """One sheet after the other, without the cost of starting processes."""

    def get_ready(self) -> None:
        pass

    def run(self, steps: Iterator[tuple[Step, Task | None]]) -> Iterator[tuple[Step, Result | None]]:
        return ((step, work(task) if task else None) for step, task in steps)

    def close(self) -> None:
        pass


@dataclass
class _Slot(Generic[Step]):
    """A step on its way; `done` once its result is there or it needs none."""

    step: Step
    task: Task | None
    result: Result | None = None
    done: bool = False


@dataclass
class _Worker:
    """One process with a pipe of its own: nothing is shared, so that a process
    which is killed at any moment can hold up no other."""

    process: BaseProcess
    pipe: Connection
    slot: _Slot[Any] | None = None
    until: float = 0.0


def _leave(*_: object) -> None:
    signal.signal(signal.SIGTERM, _is_leaving)
    sys.exit()


def _is_leaving(*_: object) -> None:
    """A call to leave changes nothing any more.  Not SIG_IGN: Python prints a
    traceback when the signal comes at the instant at which that is set."""


def _serve(pipe: Connection) -> None:
    """What a worker process does until its pipe is closed."""
    # Ctrl-C is for the process that asked; it closes the pipes.
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    # While libraries are loaded a call to leave waits: one that is left half loaded complains.
    called: list[object] = []
    signal.signal(signal.SIGTERM, lambda *call: called.append(call))
    for form in FORMS.values():
        if called or pipe.poll():
            break
        # A library that is missing is told by the sheet that needs it.
        with contextlib.suppress(MissingLibrary):
            form.get_ready()
    # An orderly end, in which libraries take their temporary folders away.
    signal.signal(signal.SIGTERM, _is_leaving if called else _leave)
    if called:
        return
    while True:
        try:
            task = pipe.recv()
        except EOFError:
            # On its way out: another call to leave would break into the tidying.
            signal.signal(signal.SIGTERM, _is_leaving)
            return
        # The one that asked may be gone; then nobody wants it.
        with contextlib.suppress(BrokenPipeError):
            pipe.send(work(task))


class Processes:
    """Several processes of this machine: liblouis and Pango bear no threads."""

    def __init__(self, jobs: int):
        # A fresh interpreter a worker: nothing half-open is inherited.
        self._context = multiprocessing.get_context("spawn")
        self._jobs = jobs
        self._workers: list[_Worker] = []

    def get_ready(self) -> None:
        """Start a process while the studio is read: an interpreter with its
        libraries takes about as long.  More of them would slow the reading on
        a small machine, and a client's few sheets need no more."""
        if not self._workers:
            self._start()

    def run(self, steps: Iterator[tuple[Step, Task | None]]) -> Iterator[tuple[Step, Result | None]]:
        slots: deque[_Slot[Step]] = deque()
        queue: deque[_Slot[Step]] = deque()
        for step, task in steps:
            slot = _Slot(step, task, done=task is None)
            slots.append(slot)
            if task is not None:
                queue.append(slot)
                self._hand_out(queue)
            while slots and (slots[0].done or len(slots) > self._jobs * _AHEAD):
                if not slots[0].done:
                    self._wait(queue)
                    continue
                first = slots.popleft()
                yield first.step, first.result
        while slots:
            if not slots[0].done:
                self._wait(queue)
                continue
            first = slots.popleft()
            yield first.step, first.result

    def _hand_out(self, queue: deque[_Slot[Step]]) -> None:
        """Give waiting tasks to idle workers; start a worker where none is idle."""
        while queue:
            worker = next((worker for worker in self._workers if worker.slot is None), None)
            if worker is None:
                if len(self._workers) >= self._jobs:
                    return
                worker = self._start()
            worker.slot, worker.until = queue.popleft(), time.monotonic() + SECONDS_A_SHEET
            try:
                worker.pipe.send(worker.slot.task)
            except OSError:
                self._lose(worker, "the process that was to make it died; make it again alone")

    def _start(self) -> _Worker:
        ours, theirs = self._context.Pipe()
        process = self._context.Process(target=_serve, args=(theirs,), daemon=True)
        process.start()
        theirs.close()
        worker = _Worker(process, ours)
        self._workers.append(worker)
        return worker

    def _wait(self, queue: deque[_Slot[Step]]) -> None:
        """Wait until at least one worker is done, dead or too late."""
        busy = [worker for worker in self._workers if worker.slot is not None]
        left = min(worker.until for worker in busy) - time.monotonic()
        ready = set(wait_for_pipes([worker.pipe for worker in busy], max(left, 0)))
        for worker in busy:
            if worker.pipe in ready:
                try:
                    result = worker.pipe.recv()
                except (EOFError, OSError):
                    self._lose(worker, "the process that made it died; make it again alone")
                    continue
                self._finish(worker, result)
            elif time.monotonic() >= worker.until:
                self._lose(worker, f"it took longer than {SECONDS_A_SHEET} seconds and was stopped")
        self._hand_out(queue)

    @staticmethod
    def _finish(worker: _Worker, result: Result) -> None:
        assert worker.slot is not None
        worker.slot.result, worker.slot.done = result, True
        worker.slot = None

    def _lose(self, worker: _Worker, failure: str) -> None:
        """Let go of a worker that is of no use; its sheet is a failure."""
        self._finish(worker, Result(None, failure, 0.0))
        self._workers.remove(worker)
        worker.process.kill()
        worker.process.join()
        worker.pipe.close()

    def close(self) -> None:
        for worker in self._workers:
            worker.pipe.close()
            worker.process.terminate()
        for worker in self._workers:
            worker.process.join(_PATIENCE)
            worker.process.kill()  # one that hangs in a library; else nothing
            worker.process.join()
        self._workers.clear()


class Cluster:
    """Workers of a Dask scheduler, on as many machines as it knows.

    address: of the scheduler, such as "tcp://10.0.0.5:8786".
    wait: seconds that it may take to answer.
    Raises ClusterMissing when the extra is not installed or nobody answers.
    """

    def __init__(self, address: str, wait: float = 10):
        try:
            from distributed import Client
        except ImportError as problem:
            raise ClusterMissing(
                "--cluster needs the extra for clusters; install it with: pip install 'handouts[cluster]'"
            ) from problem
        if not re.fullmatch(r"(?:[a-z]+://)?\S+:[0-9]{1,5}", address):
            raise ClusterMissing(f"'{address}' is not the address of a scheduler; write such as tcp://10.0.0.5:8786")
        try:
            self._client = Client(address, timeout=wait, set_as_default=False)  # type: ignore[no-untyped-call]
        except OSError as problem:
            raise ClusterMissing(
                f"no Dask scheduler answers at {address}; start one with 'dask scheduler' and its workers with "
                "'dask worker ADDRESS --nthreads 1'"
            ) from problem
        try:
            self.wait_for(1, wait)
        except TimeoutError as problem:
            self.close()
            raise ClusterMissing(
                f"the Dask scheduler at {address} has no workers; start some with 'dask worker {address} --nthreads 1'"
            ) from problem
        self._check_programs(address)

    def _check_programs(self, address: str) -> None:
        """A worker without this program, or with another version of it, would
        hang or make other sheets."""
        own = __version__

        def version() -> str:  # nested, so that it travels whole and needs nothing there
            import importlib.metadata

            try:
                return importlib.metadata.version("handouts")
            except importlib.metadata.PackageNotFoundError:
                try:
                    return str(importlib.import_module("handouts").__version__)
                except ImportError:
                    return "none"

        told = self._client.run(version)
        others = sorted({f"{worker} has {found}" for worker, found in told.items() if found != own})
        if others:
            self.close()
            raise ClusterMissing(
                f"every worker of {address} must have handouts {own}, and {others[0]}; "
                "install this version there with its extra 'cluster'"
            )

    def get_ready(self) -> None:
        pass

    def run(self, steps: Iterator[tuple[Step, Task | None]]) -> Iterator[tuple[Step, Result | None]]:
        ahead = max(1, len(self._client.scheduler_info()["workers"])) * _AHEAD
        waiting: deque[tuple[Step, Any]] = deque()
        for step, task in steps:
            waiting.append((step, self._start(task) if task else None))
            while waiting and (waiting[0][1] is None or len(waiting) > ahead):
                yield self._finished(*waiting.popleft())
        for step, future in waiting:
            yield self._finished(step, future)

    def _finished(self, step: Step, future: Any) -> tuple[Step, Result | None]:
        return step, None if future is None else self._finish(future)

    def wait_for(self, count: int, wait: float = 60) -> None:
        """Wait until that many workers have joined the scheduler; TimeoutError if they do not."""
        self._client.wait_for_workers(count, timeout=wait)

    def _start(self, task: Task) -> Any:
        # pure=False: two equal tasks are two sheets.  A worker that dies costs
        # a retry elsewhere.
        return self._client.submit(work, task, pure=False, retries=3)

    def _finish(self, future: Any) -> Result:
        try:
            result: Result = future.result(timeout=SECONDS_A_SHEET)
        except Exception as problem:  # whatever a distant worker met
            return Result(None, f"the cluster could not make it ({type(problem).__name__}: {problem})", 0.0)
        return result

    def close(self) -> None:
        self._client.close()  # type: ignore[no-untyped-call]


class ClusterMissing(HandoutsError):
    """The cluster asked for is not to be had."""


def workers_for(jobs: int | None, cluster: str | None) -> Workers:
    """The workers that were asked for.

    jobs: processes; None for as many as the machine has cores; 1 for this
        process alone, in which a hang or a crash of a library is not caught.
    cluster: address of a Dask scheduler, or None.
    """
    if cluster is not None:
        return Cluster(cluster)
    return InThisProcess() if jobs == 1 else Processes(jobs or _cores())


def _cores() -> int:
    # The cores that this process may use, where the system tells.
    return len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count() or 1
