"""A whole conversation between an editor and `handouts check --serve`, in raw messages.

Source: Language Server Protocol Specification 3.17, "Base Protocol" and the
messages by their names there.
"""

from __future__ import annotations

import json
import os
import subprocess
import sys
import threading
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]


class Editor:
    """The other end: sends requests and notifications, and waits for what it wants."""

    def __init__(self, folder: Path, encodings: list[str] | None = None):
        self.process = subprocess.Popen(
            [sys.executable, "-m", "handouts", "check", "--serve"],
            cwd=folder,
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            stderr=subprocess.PIPE,
            env={**os.environ, "PYTHONPATH": str(ROOT)},
        )
        # A server that never answers must end the test, not hold it up.
        self.watchdog = threading.Timer(120, self.process.kill)
        self.watchdog.start()
        self.number = 0
        capabilities = {"general": {"positionEncodings": encodings}} if encodings else {}
        self.server = self.ask(
            "initialize", {"processId": os.getpid(), "rootUri": folder.as_uri(), "capabilities": capabilities}
        )
        self.tell("initialized", {})

    def _send(self, message):
        body = json.dumps({"jsonrpc": "2.0", **message}).encode()
        self.process.stdin.write(b"Content-Length: %d\r\n\r\n" % len(body) + body)
        self.process.stdin.flush()

    def _receive(self):
        length = 0
        while line := self.process.stdout.readline().strip():
            name, _, value = line.partition(b":")
            if name.lower() == b"content-length":
                length = int(value)
        assert length, self.process.stderr.read().decode()
        return json.loads(self.process.stdout.read(length))

    def tell(self, method, params):
        self._send({"method": method, "params": params})

    def ask(self, method, params):
        self.number += 1
        self._send({"id": self.number, "method": method, "params": params})
        while (answer := self._receive()).get("id") != self.number:
            pass
        assert "error" not in answer, answer
        return answer["result"]

    def diagnostics(self, uri):
        while True:
            message = self._receive()
            if message.get("method") == "textDocument/publishDiagnostics" and message["params"]["uri"] == uri:
                return message["params"]["diagnostics"]

    def open(self, uri, text):
        document = {"uri": uri, "languageId": "markdown", "version": 1, "text": text}
        self.tell("textDocument/didOpen", {"textDocument": document})
        return self.diagnostics(uri)

    def fixes(self, uri, place):
        context = {"diagnostics": []}
        return self.ask("textDocument/codeAction", {"textDocument": {"uri": uri}, "range": place, "context": context})

    def close(self):
        self.ask("shutdown", None)
        self.tell("exit", None)
        status = self.process.wait()
        self.watchdog.cancel()
        for pipe in (self.process.stdin, self.process.stdout, self.process.stderr):
            pipe.close()
        return status


@pytest.fixture
def editor(tmp_path):
    editor = Editor(tmp_path)
    yield editor
    assert editor.close() == 0


def place(line, start, end):
    return {"start": {"line": line, "character": start}, "end": {"line": line, "character": end}}


def test_marks_appear_while_the_trainer_types(editor, tmp_path):
    uri = (tmp_path / "row.md").as_uri()
    assert editor.server["serverInfo"]["name"] == "handouts"
    assert editor.open(uri, "Sit tall.\n") == []

    change = {"range": place(0, 0, 9), "text": "Bring the weight over here."}
    editor.tell("textDocument/didChange", {"textDocument": {"uri": uri, "version": 2}, "contentChanges": [change]})
    (found,) = editor.diagnostics(uri)
    assert found["range"] == place(0, 17, 26)
    assert (found["code"], found["source"], found["severity"]) == ("pointing", "handouts", 1)
    assert found["message"].startswith("pointing blocks: ")

    editor.tell("textDocument/didClose", {"textDocument": {"uri": uri}})
    assert editor.diagnostics(uri) == []


def test_a_safe_rewrite_is_a_quick_fix_and_an_unsafe_one_is_not(editor, tmp_path):
    uri = (tmp_path / "row.md").as_uri()
    found = editor.open(uri, "Look at the ceiling.\nTurn both palms towards the camera.\n")
    assert [(entry["code"], entry["range"]["start"]["line"]) for entry in found] == [("gaze", 0), ("viewer", 1)]
    (fix,) = editor.fixes(uri, found[0]["range"])
    assert fix["kind"] == "quickfix"
    (edit,) = fix["edit"]["changes"][uri]
    assert (edit["range"], edit["newText"]) == (place(0, 0, 19), "Point your nose toward the ceiling")
    assert editor.fixes(uri, found[1]["range"]) == []

    change = {"range": edit["range"], "text": edit["newText"]}
    editor.tell("textDocument/didChange", {"textDocument": {"uri": uri, "version": 2}, "contentChanges": [change]})
    assert [entry["code"] for entry in editor.diagnostics(uri)] == ["viewer"]


def test_places_are_in_utf_16_units_by_default(editor, tmp_path):
    (found,) = editor.open((tmp_path / "row.md").as_uri(), "Élan 💪 and bring it over here.\r\n")
    # The arm is one character and two units of UTF-16.
    assert found["range"] == place(0, 21, 30)


def test_places_are_in_the_units_that_the_editor_asks_for(tmp_path):
    editor = Editor(tmp_path, ["utf-32"])
    (found,) = editor.open((tmp_path / "row.md").as_uri(), "Élan 💪 and bring it over here.\n")
    assert found["range"] == place(0, 20, 29)
    assert editor.close() == 0


def test_settings_beside_the_text_count_and_their_faults_are_told(editor, tmp_path):
    uri = (tmp_path / "row.md").as_uri()
    settings = tmp_path / "wording.yaml"
    settings.write_text("turned off:\n  pointing: We stand beside them.\n", "utf-8")
    assert editor.open(uri, "Bring the weight over here.\n") == []
    settings.write_text("colour: red\n", "utf-8")
    editor.tell("textDocument/didSave", {"textDocument": {"uri": uri}})
    codes = {entry.get("code"): entry["message"] for entry in editor.diagnostics(uri)}
    assert "pointing" in codes
    assert "there is no setting 'colour'" in codes[None]


def test_a_broken_front_matter_is_told_at_its_line_and_the_text_is_checked(editor, tmp_path):
    text = "---\ntitle: [open\n---\nBring the weight over here.\n"
    found = editor.open((tmp_path / "row.md").as_uri(), text)
    assert [(entry.get("code"), entry["range"]["start"]["line"]) for entry in found] == [("pointing", 3), (None, 1)]


def test_a_text_that_is_no_file_yet_is_checked_too(editor):
    (found,) = editor.open("untitled:Untitled-1", "Bring the weight over here.\n")
    assert found["code"] == "pointing"


def test_without_the_extra_the_message_says_what_to_install(tmp_path):
    hide = "import sys\nfor name in ('pygls', 'lsprotocol'): sys.modules[name] = None\n"
    program = hide + "sys.argv = ['handouts', 'check', '--serve']\nfrom handouts.cli import main\nmain()"
    run = subprocess.run(
        [sys.executable, "-c", program], capture_output=True, text=True, env={**os.environ, "PYTHONPATH": str(ROOT)}
    )
    assert run.returncode == 2
    assert "pip install 'handouts[editor]'" in run.stderr and "Traceback" not in run.stderr
