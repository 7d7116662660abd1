"""Who makes the sheets: this process, several processes, or other machines.

One small seam: `Workers.run` takes steps, some of which have a task that
carries all it needs, and gives each step back with its result, in order.  A
worker needs no shared disk; it returns bytes, and the one process that asked
writes them.
"""

from __future__ import annotations

import os
import time
from collections import deque
from collections.abc import Callable, Iterator
from concurrent.futures import Future
from dataclasses import dataclass
from typing import Any, Protocol, TypeVar

from handouts import __version__
from handouts.errors import HandoutsError, MissingLibrary, RenderError
from handouts.forms import FORMS, Look, Rendered
from handouts.handout import Handout

# No sheet takes near as long; a worker that hangs costs one sheet, not the run.
SECONDS_A_SHEET = 300
# Tasks on their way for each worker: enough to keep it busy, few enough that
# memory stays flat however many clients there are.
_AHEAD = 3


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

    def run(self, steps: Iterator[tuple[Step, Task | None]]) -> Iterator[tuple[Step, Result | None]]:
        """Each step in order, with what came of its task; None where it has none."""

    def close(self) -> None:
        """Let the workers go; nothing runs afterwards."""


def work(task: Task) -> Result:
    """Make one sheet, here and now; what is no bug comes back as a failure."""
    begun = time.perf_counter()
    try:
        rendered = FORMS[task.form].render(task.handout, task.settings, task.look)
    except (MissingLibrary, RenderError) as problem:
        return Result(None, str(problem), time.perf_counter() - begun)
    return Result(rendered, "", time.perf_counter() - begun)


class InThisProcess:
    """One sheet after the other, without the cost of starting processes."""

    def run(self, steps: Iterator[tuple[Step, Task | None]]) -> Iterator[tuple[Step, Result | None]]:
        return ((step, work(task) if task else None) for step, task in steps)

    def close(self) -> None:
        pass


class Processes:
    """Several processes of this machine: liblouis and Pango bear no threads."""

    def __init__(self, jobs: int):
        import multiprocessing

        from pebble import ProcessPool

        # A fresh interpreter a worker: nothing half-open is inherited.  The pool
        # starts none before the first task comes.
        self._pool = ProcessPool(max_workers=jobs, context=multiprocessing.get_context("spawn"))
        self._jobs = jobs

    def run(self, steps: Iterator[tuple[Step, Task | None]]) -> Iterator[tuple[Step, Result | None]]:
        return _in_order(steps, self._start, self._finish, self._jobs * _AHEAD)

    def _start(self, task: Task) -> Future[Result]:
        future: Future[Result] = self._pool.schedule(work, args=[task], timeout=SECONDS_A_SHEET)
        return future

    def _finish(self, future: Future[Result]) -> Result:
        from pebble import ProcessExpired

        try:
            return future.result()
        except TimeoutError:
            return Result(None, f"it took longer than {SECONDS_A_SHEET} seconds and was stopped", SECONDS_A_SHEET)
        except ProcessExpired as problem:
            return Result(None, f"the process that made it died ({problem}); make it again alone", 0.0)

    def close(self) -> None:
        self._pool.stop()  # type: ignore[no-untyped-call]
        self._pool.join()


class Cluster:
    """Workers of a Dask scheduler, on as many machines as it knows.

    address: of the scheduler, such as "tcp://10.0.0.5:8786".
    wait: how long it may take to answer.
    Raises ClusterMissing when the extra is not installed or nobody answers.
    """

    def __init__(self, address: str, wait: str = "10s"):
        try:
            from distributed import Client
        except ImportError as problem:
            raise ClusterMissing(
                "--cluster needs the extra for clusters; install it with: pip install 'handouts[cluster]'"
            ) from problem
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

        told = self._client.run(version)  # type: ignore[no-untyped-call]
        others = sorted({f"{worker} has {found}" for worker, found in told.items() if found != own})
        if others:
            self.close()
            raise ClusterMissing(
                f"every worker of {address} must have handouts {own}, and {others[0]}; "
                "install this version there with its extra 'cluster'"
            )

    def run(self, steps: Iterator[tuple[Step, Task | None]]) -> Iterator[tuple[Step, Result | None]]:
        workers = max(1, len(self._client.scheduler_info()["workers"]))
        return _in_order(steps, self._start, self._finish, workers * _AHEAD)

    def wait_for(self, count: int, wait: str = "60s") -> None:
        """Wait until that many workers have joined the scheduler; TimeoutError if they do not."""
        self._client.wait_for_workers(count, timeout=wait)  # type: ignore[no-untyped-call]

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


def _in_order(
    steps: Iterator[tuple[Step, Task | None]],
    start: Callable[[Task], Any],
    finish: Callable[[Any], Result],
    ahead: int,
) -> Iterator[tuple[Step, Result | None]]:
    """Steps in order, with at most `ahead` tasks on their way."""
    waiting: deque[tuple[Step, Any]] = deque()
    running = 0
    for step, task in steps:
        waiting.append((step, start(task) if task else None))
        running += task is not None
        while waiting and (running >= ahead or waiting[0][1] is None):
            first, future = waiting.popleft()
            running -= future is not None
            yield first, finish(future) if future is not None else None
    for step, future in waiting:
        yield step, finish(future) if future is not None else None


def workers_for(jobs: int | None, sheets: int, cluster: str | None) -> Workers:
    """The workers that fit the work.

    jobs: processes asked for; None for as many as the machine has cores.
    sheets: how many sheets there are at the most; a few are quicker in place.
    cluster: address of a Dask scheduler, or None.
    """
    if cluster is not None:
        return Cluster(cluster)
    jobs = jobs or _cores()
    few = 4
    if jobs == 1 or sheets <= few:
        return InThisProcess()
    return Processes(min(jobs, sheets))


def _cores() -> int:
    # The cores that this process may use, where the system tells.
    return len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count() or 1
