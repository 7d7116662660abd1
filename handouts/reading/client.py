"""Client files: who the client is, what they have, how they read."""

from __future__ import annotations

from handouts.models import Client, ClientFacts
from handouts.reading.faults import shape
from handouts.reading.yaml_text import YamlText


def client_from(document: YamlText, shown: str) -> Client:
    """The client that a file holds.  shown: its path, relative to the studio.

    Raises StudioFaults with every fault of the file.
    """
    facts = shape(ClientFacts, document, shown)
    return Client(path=shown, facts=facts, lines=dict(document.root.key_lines))
