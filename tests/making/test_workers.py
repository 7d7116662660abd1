"""Workers: this process, several processes, a Dask cluster; deaths cost one retry or one sheet."""

import json
import multiprocessing
import os
import signal
import subprocess
import sys
import threading
import time
from pathlib import Path

import pytest

from handouts.forms import Look
from handouts.handout import Handout, Paragraph, Text
from handouts.making import workers as module
from handouts.making.workers import Cluster, ClusterMissing, InThisProcess, Processes, Task, workers_for
from handouts.models import ScreenForm

ROOT = Path(module.__file__).parents[2]


def task(number):
    handout = Handout(
        sheet="card", language="en", title=(Text(f"Card {number}"),), client="Ana", client_code="C", plan_code="P",
        version=1, running_head="Ana", date="2029-01-01", review_by="", blocks=(Paragraph((Text(f"Line {number}"),)),),
    )
    return Task("screen", handout, ScreenForm(), Look())


def steps(count):
    # Every third step has nothing to render.
    return iter([(number, None if number % 3 == 2 else task(number)) for number in range(count)])


def check(results, count):
    assert [step for step, _ in results] == list(range(count))
    for number, result in results:
        if number % 3 == 2:
            assert result is None
        else:
            assert result.rendered is not None, result.failure
            assert f"Line {number}" in result.rendered.data.decode()


def test_in_this_process_results_come_in_order():
    check(list(InThisProcess().run(steps(10))), 10)


def test_processes_give_the_same_in_order():
    workers = Processes(2)
    try:
        results = list(workers.run(steps(20)))
    finally:
        workers.close()
    check(results, 20)
    single = dict(InThisProcess().run(steps(20)))
    for number, result in results:
        assert (result and result.rendered) == (single[number] and single[number].rendered)


def test_a_process_that_was_started_early_makes_the_sheets():
    workers = Processes(2)
    try:
        workers.get_ready()
        [early] = multiprocessing.active_children()
        results = list(workers.run(iter([(number, task(number)) for number in range(3)])))
        assert early in multiprocessing.active_children()
    finally:
        workers.close()
    assert all(result.rendered for _, result in results)


def test_a_process_that_was_started_early_goes_without_work():
    workers = Processes(2)
    workers.get_ready()
    workers.close()
    assert not multiprocessing.active_children()


def test_a_form_that_cannot_be_made_is_a_failure_not_an_error():
    broken = Task("screen", task(0).handout, ScreenForm(), Look(overrides=(("screen.html.j2", "{% if %}"),)))
    [(_, result)] = list(InThisProcess().run(iter([(0, broken)])))
    assert result.rendered is None and "screen.html.j2" in result.failure


def test_a_process_that_is_killed_costs_one_sheet_at_most():
    workers = Processes(2)
    try:
        stream = workers.run(iter([(number, task(number)) for number in range(60)]))
        done = [next(stream)]
        os.kill(multiprocessing.active_children()[-1].pid, signal.SIGKILL)
        done += stream
    finally:
        workers.close()
    assert [step for step, _ in done] == list(range(60))
    failed = [result for _, result in done if result.rendered is None]
    assert len(failed) <= 1
    assert all("died" in result.failure for result in failed)


def test_processes_are_usual_and_a_cluster_must_be_there():
    assert isinstance(workers_for(None, None), Processes)
    assert isinstance(workers_for(1, None), InThisProcess)
    many = workers_for(2, None)
    assert isinstance(many, Processes)
    many.close()
    with pytest.raises(ClusterMissing, match="no Dask scheduler answers"):
        Cluster("tcp://127.0.0.1:9", wait=1)


@pytest.fixture
def scheduler(tmp_path):
    """A real scheduler and two real worker processes on this machine."""
    told = tmp_path / "scheduler.json"
    quiet = {"stdout": subprocess.DEVNULL, "stderr": subprocess.DEVNULL}
    place = {**os.environ, "PYTHONPATH": str(ROOT)}
    dask = [sys.executable, "-m", "distributed.cli.dask_scheduler", "--host", "127.0.0.1", "--port", "0",
            "--no-dashboard", "--scheduler-file", str(told)]
    running = [subprocess.Popen(dask, **quiet)]
    until = time.monotonic() + 60
    while not told.exists() and time.monotonic() < until:
        time.sleep(0.1)
    for name in ("one", "two"):
        worker = [sys.executable, "-m", "distributed.cli.dask_worker", "--scheduler-file", str(told), "--nthreads", "1",
                  "--name", name, "--no-nanny", "--no-dashboard", "--local-directory", str(tmp_path / name)]
        running.append(subprocess.Popen(worker, cwd=tmp_path, env=place, **quiet))
    yield json.loads(told.read_text())["address"], running
    for process in running:
        process.kill()
        process.wait()


@pytest.mark.filterwarnings("ignore")
def test_a_cluster_makes_the_same_and_survives_the_death_of_a_worker(scheduler):
    address, (_, first, _second) = scheduler
    workers = Cluster(address)
    try:
        workers.wait_for(2)
        stream = workers.run(iter([(number, task(number)) for number in range(40)]))
        done = [next(stream)]
        threading.Thread(target=first.kill).start()
        done += stream
    finally:
        workers.close()
    assert [step for step, _ in done] == list(range(40))
    assert [result.failure for _, result in done if result.rendered is None] == []
    assert f"Line {39}" in done[-1][1].rendered.data.decode()


@pytest.mark.filterwarnings("ignore")
def test_workers_with_another_version_are_refused(scheduler, monkeypatch):
    address, _ = scheduler
    monkeypatch.setattr(module, "__version__", "9.9.9")
    with pytest.raises(ClusterMissing, match=r"must have handouts 9\.9\.9"):
        Cluster(address)


def test_only_a_few_steps_are_on_their_way_at_once():
    pulled = []

    def many():
        for number in range(1000):
            pulled.append(number)
            yield number, task(number)

    workers = Processes(2)
    try:
        next(workers.run(many()))
    finally:
        workers.close()
    assert len(pulled) <= 2 * module._AHEAD + 2


def test_a_fault_of_the_program_costs_one_sheet_and_shows_itself(capfd):
    wrong = Task("screen", "not a handout", ScreenForm(), Look())
    results = list(InThisProcess().run(iter([(0, wrong), (1, task(1))])))
    assert "fault of the program" in results[0][1].failure
    assert results[1][1].rendered is not None
    assert "Traceback" in capfd.readouterr().err


def test_a_worker_that_hangs_is_stopped(monkeypatch):
    monkeypatch.setattr(module, "SECONDS_A_SHEET", 0)
    workers = Processes(1)
    try:
        [(_, result)] = list(workers.run(iter([(0, task(0))])))
    finally:
        workers.close()
    assert result.rendered is None and "was stopped" in result.failure
