"""A small sound studio on disk, to be spoiled one line at a time."""

from pathlib import Path

import pytest

SQUAT = """\
---
title: Goblet squat
equipment: [dumbbell]
positions: [standing]
sides: together
hands: both on one
clock: floor
regions: [thighs]
demands: [deep_knee]
knee bend: 110 degrees
options:
  to-chair-height:
    title: To chair height
    demands: []
    knee bend: 90 degrees
substitutes:
  - exercise: march
  - exercise: goblet-squat
    option: to-chair-height
---

## Equipment
One dumbbell.

## Start position
1. Stand with both feet flat.

## Movement
1. Bend both knees.
2. Stand up, and breathe out.

## Breathing
Breathe out on the way up.

## Count
Down and up counts one.

## Key points
- Both heels stay on the floor.

## Easier
- **To chair height.** Stop when the chair touches you.

## Harder
- **Slow lowering.** Count four on the way down.

## Finish
1. Set the dumbbell down.
"""

SQUAT_IN_FRENCH = """\
---
language: fr
title: Squat
options:
  to-chair-height:
    title: À hauteur de chaise
  slow-lowering:
    title: Descente lente
---

## Matériel
Un haltère.

## Position de départ
1. Tenez-vous debout.

## Mouvement
1. Pliez les deux genoux.

## Respiration
Expirez en montant.

## Compte
Descendre et monter compte un.

## Points clés
- Les deux talons restent au sol.

## Plus facile
- **À hauteur de chaise.** Arrêtez au contact de la chaise.

## Plus difficile
- **Descente lente.** Comptez jusqu'à quatre.

## Fin
1. Posez l'haltère.
"""

MARCH = """\
---
title: March
equipment: [wall]
positions: [standing, seated]
sides: alternating
regions: [thighs]
substitutes:
  - exercise: goblet-squat
---

## Equipment
A wall.

## Start position
1. Stand.

## Movement
1. Lift one knee, then the other.

## Breathing
Breathe freely.

## Count
Each knee counts one.

## Key points
- Stand tall.

## Easier
- **Heels only.** Lift each heel.

## Harder
- **Arms too.** Swing both arms.

## Finish
1. Stand still.
"""

PLAN = """\
plan: P1
version: 1
title: First
date: 2029-01-08
session:
  - structure: straight sets
    exercise: goblet-squat
    sets: 3
    dose: 8-12 reps
    rest: 90 s
"""

CLIENT = """\
code: C1
name: Noor
units: kg
forms:
  print:
    size: 24 pt
plans:
  - plan: P1
"""

STUDIO = """\
name: the Yard
coach: Ilse
emergency: 112
"""


class Folder:
    """A studio folder and its starter library in a temporary place."""

    def __init__(self, root: Path):
        self.root = root / "studio"
        self.starter = root / "library" / "exercise_texts"
        self.starter.mkdir(parents=True)
        for name, text in {
            "studio.yaml": STUDIO,
            "clients/C1.yaml": CLIENT,
            "plans/P1-v1.yaml": PLAN,
        }.items():
            self.write(name, text)
        (self.starter / "goblet-squat.md").write_text(SQUAT, "utf-8")
        (self.starter / "march.md").write_text(MARCH, "utf-8")

    def write(self, name, text):
        path = self.root / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(text if isinstance(text, bytes) else text.encode())

    def change(self, name, old, new):
        path = self.root / name
        text = path.read_text("utf-8")
        assert old in text
        path.write_text(text.replace(old, new), "utf-8")


@pytest.fixture
def folder(tmp_path):
    return Folder(tmp_path)
