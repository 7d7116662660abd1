"""The checker in an editor: a language server over standard input and output.

Findings come as diagnostics while the trainer types; where words can safely
take the place of others, a quick fix offers them.

Source of the protocol: "Language Server Protocol Specification 3.17".
"""

from __future__ import annotations

import re
from pathlib import Path

from lsprotocol import types
from pygls.lsp.server import LanguageServer
from pygls.uris import to_fs_path
from pygls.workspace import PositionCodec

from handouts import __version__
from handouts.errors import Fault, StudioFaults
from handouts.wording.checking import CheckedText, Finding, check_one, settings_for
from handouts.wording.settings import Settings

_LINE_END = re.compile("\r\n|\r|\n")
_SEVERITY = {"blocks": types.DiagnosticSeverity.Error, "advice": types.DiagnosticSeverity.Warning}


def serve() -> None:
    """Talk to one editor until it says goodbye."""
    make_server().start_io()


def make_server() -> LanguageServer:
    """The server, not yet started."""
    server = LanguageServer("handouts", __version__)

    @server.feature(types.TEXT_DOCUMENT_DID_OPEN)
    def opened(ls: LanguageServer, params: types.DidOpenTextDocumentParams) -> None:
        _publish(ls, params.text_document.uri)

    @server.feature(types.TEXT_DOCUMENT_DID_CHANGE)
    def changed(ls: LanguageServer, params: types.DidChangeTextDocumentParams) -> None:
        _publish(ls, params.text_document.uri)

    @server.feature(types.TEXT_DOCUMENT_DID_SAVE)
    def saved(ls: LanguageServer, params: types.DidSaveTextDocumentParams) -> None:
        _publish(ls, params.text_document.uri)

    @server.feature(types.TEXT_DOCUMENT_DID_CLOSE)
    def closed(ls: LanguageServer, params: types.DidCloseTextDocumentParams) -> None:
        empty = types.PublishDiagnosticsParams(uri=params.text_document.uri, diagnostics=[])
        ls.text_document_publish_diagnostics(empty)

    @server.feature(
        types.TEXT_DOCUMENT_CODE_ACTION, types.CodeActionOptions(code_action_kinds=[types.CodeActionKind.QuickFix])
    )
    def quick_fixes(ls: LanguageServer, params: types.CodeActionParams) -> list[types.CodeAction]:
        return _quick_fixes(ls, params)

    return server


def _publish(ls: LanguageServer, uri: str) -> None:
    document = ls.workspace.get_text_document(uri)
    lines = _LINE_END.split(document.source)
    faults: list[Fault] = []
    checked = _checked(uri, lines, faults)
    codec = ls.workspace.position_codec
    diagnostics = [_diagnostic(finding, lines, codec) for finding in (checked.findings if checked else ())]
    diagnostics += [_told(fault) for fault in faults]
    ls.text_document_publish_diagnostics(
        types.PublishDiagnosticsParams(uri=uri, version=document.version, diagnostics=diagnostics)
    )


def _checked(uri: str, lines: list[str], faults: list[Fault]) -> CheckedText | None:
    """None when the text cannot be checked at all; `faults` says why."""
    path = to_fs_path(uri) if uri.startswith("file:") else None
    settings = Settings()
    try:
        settings = settings_for(Path(path)) if path else settings
    except StudioFaults as problem:
        faults += problem.faults
    try:
        return check_one("\n".join(lines), path or uri, settings, faults=faults)
    except StudioFaults as problem:
        faults += problem.faults
        return None


def _range(finding: Finding, lines: list[str], codec: PositionCodec) -> types.Range:
    """A finding's place in the units that the editor counts in."""

    def position(line: int, column: int) -> types.Position:
        return types.Position(line - 1, codec.client_num_units(lines[line - 1][: column - 1]))

    return types.Range(position(finding.line, finding.column), position(finding.end_line, finding.end_column))


def _diagnostic(finding: Finding, lines: list[str], codec: PositionCodec) -> types.Diagnostic:
    return types.Diagnostic(
        range=_range(finding, lines, codec),
        message=f"{finding.name} {finding.strength}: {finding.suggest} {finding.why}",
        severity=_SEVERITY[finding.strength],
        code=finding.name,
        source="handouts",
    )


def _told(fault: Fault) -> types.Diagnostic:
    """A fault of the front matter or of the settings, at its line."""
    line = max(0, fault.line - 1)
    place = types.Range(types.Position(line, 0), types.Position(line, 0))
    return types.Diagnostic(place, str(fault), types.DiagnosticSeverity.Error, source="handouts")


def _quick_fixes(ls: LanguageServer, params: types.CodeActionParams) -> list[types.CodeAction]:
    uri = params.text_document.uri
    lines = _LINE_END.split(ls.workspace.get_text_document(uri).source)
    checked = _checked(uri, lines, [])
    fixes = []
    for finding in checked.marks if checked else ():
        place = _range(finding, lines, ls.workspace.position_codec)
        if finding.rewrite is None or not _meet(place, params.range):
            continue
        fixes.append(
            types.CodeAction(
                title=f"Write '{finding.rewrite}'",
                kind=types.CodeActionKind.QuickFix,
                diagnostics=[_diagnostic(finding, lines, ls.workspace.position_codec)],
                is_preferred=True,
                edit=types.WorkspaceEdit(changes={uri: [types.TextEdit(place, finding.rewrite)]}),
            )
        )
    return fixes


def _meet(one: types.Range, other: types.Range) -> bool:
    return one.start <= other.end and other.start <= one.end
