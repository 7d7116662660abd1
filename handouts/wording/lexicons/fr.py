"""French words, in classes that the grammar of the French kinds is written in.

An elided word and its noun are two words: "l'écran" is "l" and "écran", and
so are a verb and the pronoun after its hyphen: "regardez-moi".
"""

from __future__ import annotations

import re

from handouts.wording.grammar import Lexicon


def _words(text: str) -> list[str]:
    return text.split()


def _er(text: str) -> list[str]:
    """The forms of regular verbs that an instruction uses, from their stems."""
    return [stem + ending for stem in text.split() for ending in ("e", "es", "ez", "er", "ons", "ent", "ant", "é")]


_LOOK = _er("regard observ contempl visionn") + _words("mater matez")
_CHECK = _er("contrôl surveill") + _words(
    "vérifie vérifies vérifiez vérifier vérifions vérifiant lis lisez lire lisons consulte consultez consulter repère repérez repérer"
)
_COPY = _er("copi imit mim") + _words("reproduis reproduisez reproduire suis suivez suivre refais refaites refaire")
_SHOW = _er("montr indiqu présent illustr") + _words("montré montrée montrés montrées")
_MOVE = _er(
    "pos amen avanc tourn pivot pouss tir mont plac gliss écart approch laiss arrêt pench recul lev baiss pli port rapproch éloign "
    "dirig orient press bascul inclin appuy déplac install ramèn allong enfonc abaiss tend coinc attach accroch"
) + _words(
    "place placez mets mettez mettre mettons va allez aller vas viens venez venir descends descendez descendre reviens revenez tiens tenez "
    "tenir étends étendez étendre tendez tends tendre amène amènes amenez amener lève lèves levez lever ramène ramenez ramener fais faites "
    "faire prends prenez prendre pars partez partir ouvre ouvrez ouvrir"
)
_STAY = _words("reste restes restez rester restons demeurez demeure tenez tiens tenir attendez attends")

_LANDMARKS = _words(
    "tête visage front nez menton oreille oreilles nuque cou gorge épaule épaules clavicule aisselle aisselles bras coude coudes avant-bras "
    "poignet poignets main mains paume paumes doigt doigts pouce pouces poing poings poitrine sternum côte côtes ventre nombril taille hanche "
    "hanches bassin fesse fesses cuisse cuisses genou genoux tibia tibias mollet mollets cheville chevilles pied pieds talon talons orteil "
    "orteils plante dos reins colonne omoplate omoplates flanc aine rotule corps buste tronc crâne"
)
_SURFACES = _words(
    "sol plancher mur murs chaise chaises banc tapis siège assise dossier rampe table porte marche coussin plafond barre support accoudoir lit "
    "canapé serviette plinthe carrelage"
)
_MEASURES = _words(
    "longueur longueurs largeur largeurs doigt doigts paume pouce centimètre centimètres cm mètre mètres degré degrés heure heures pas"
)

_COLOURS = _words(
    "rouge rouges bleu bleue bleus bleues vert verte verts vertes jaune jaunes orange oranges violet violette violets violettes rose roses gris "
    "grise grises noir noire noirs noires blanc blanche blancs blanches marron beige turquoise bordeaux doré dorée dorés dorées argenté argentée "
    "fluo mauve mauves kaki"
)
_SHINE = _words("brillant brillante brillants brillantes foncé foncée foncés foncées clair claire sombre luisant luisante coloré colorée chromé chromée")
_KIT = _words(
    "élastique élastiques bande bandes haltère haltères poids ballon balle ballons balles tapis poignée poignées barre barres bout extrémité "
    "bouton curseur disque disques kettlebell sangle sangles corde coussin cordon plot plots cône cônes brique briques rouleau bâton step "
    "marche levier manette repose-pied fauteuil chaise banc cale planche étiquette étiquettes couvercle capuchon bouchon embout manche housse sac serviette lumière voyant anneau anneaux cerceau galet galets boîte étui sachet gant gants bracelet lest lests médecine-ball quille quilles pavé dalle carreau carreaux"
)
_PRINTED = _words(
    "ligne lignes trait traits repère repères marque marques croix point points cercle cercles ruban rubans scotch adhésif pastille "
    "pastilles gommette autocollant"
)
_FELT = _words(
    "nœud nœuds noeud noeuds relief rugueux rugueuse rugueuses lisse épais épaisse épaisses mince mou molle dur dure lourd lourde lourds lourdes "
    "léger légère caoutchouc métal bois mousse toucher touche sent sentir sentez braille encoche encoches cran plus gros grosse large court courte "
    "long longue froid froide élastiqué kilos kg gauche droite"
)

_PICTURE = _words(
    "photo photos image images dessin dessins schéma schémas croquis illustration illustrations diagramme diagrammes vidéo vidéos affiche "
    "affiches poster posters figure figures vignette vignettes clip clips animation film flèche flèches pictogramme pictogrammes planche capture"
)
_SCREEN = _words("caméra écran objectif téléphone tablette webcam appareil moniteur télé télévision ordinateur")
_CLOCK = _words(
    "heure aiguille aiguilles montre pendule horloge chronomètre chrono minuteur minuterie compteur cadran écran afficheur affichage tableau"
)
_MIRROR = _words("miroir miroirs glace reflet vitre")
_DET = _words("le la les l un une des ce cet cette ces mon ma mes ton ta tes votre vos son sa ses leur leurs notre nos du au aux de d chaque")
_AT = _words(
    "sur sous contre devant derrière entre vers à au aux près dessus dessous dans jusqu jusque"
)

LEXICON = Lexicon(
    {
        "leader": _words("et puis mais ou donc alors maintenant ensuite juste bien ok bon voilà"),
        "name": (),
        "forename": (),
        "look": _LOOK,
        "check": _CHECK,
        "copy": _COPY,
        "show": _SHOW,
        "move": _MOVE,
        "stay": _STAY,
        "landmark": _LANDMARKS,
        "surface": _SURFACES,
        "measure": _MEASURES,
        "colour": _COLOURS,
        "shine": _SHINE,
        "kit": _KIT,
        "printed": _PRINTED,
        "felt": _FELT,
        "picture": _PICTURE,
        "screen": _SCREEN,
        "clock": _CLOCK,
        "mirror": _MIRROR,
        "det": _DET,
        "at": _AT,
    }
)

_ELIDED = re.compile(r"(?<![^\W\d_])(?:[cdjlmnst]|qu|jusqu|lorsqu|puisqu|quoiqu|presqu)(['’])(?=[^\W\d_])", re.IGNORECASE)
_AFTER_VERB = re.compile(r"(?<=[^\W\d_])-(?=(?:moi|toi|le|la|les|lui|leur|nous|vous|y|en|ci|je|tu|il|elle|on|ce|t)\b)", re.IGNORECASE)


def apart(text: str) -> str:
    """A text with the apostrophe of each elision and the hyphen before each
    pronoun made a space, so that the words stand apart; every other character
    keeps its place."""
    text = _ELIDED.sub(lambda found: found[0][:-1] + " ", text)
    return _AFTER_VERB.sub(" ", text)
