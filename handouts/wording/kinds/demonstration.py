"""The kind "demonstration": the movement is shown, not said."""

from collections.abc import Iterator

from handouts.wording.grammar import Phrases
from handouts.wording.kinds.kind import Kind, Span
from handouts.wording.landmarks import is_part
from handouts.wording.lexicons.en import LEXICON
from handouts.wording.prose import PAUSES, Sentence, word_at

_STANDS_FOR = {
    # whoever does the showing
    "who": """
        me|mine|myself|us|ours|@name
        him|her|them !@body
        the|our|your|that|this _? @role
        @role @name
        wee|young|old|our|big|little|dear|lovely @name
        therapist|physio|instructor|demonstrator|clinician !@number
    """,
    # whoever is shown, in a comparison
    "shown": """
        me|mine|ours|hers|theirs|@name
        the|our|your|that|this _? @role
        our @name
        @role @name
        the one|ones|person|people next|in|at|on|beside|opposite
        wee|young|old|big|little|dear|lovely @name
        these|those _? @role
    """,
    # a thing of theirs: whose it is, and the thing
    "theirs": """
        mine|ours|hers|theirs
        my|our|his|her|their _? @body|@kit
        @name|@role 's _? @body|@kit
        the|our|your|that|this|a _? @role 's _? @body|@kit
        therapist|physio|instructor|demonstrator|clinician|leader 's _? _
    """,
    # a thing of theirs, whatever it is
    "whose": """
        mine|ours
        my|our|his|their|her _? _
        @name 's
        the|our|your|that|this|a _? @role 's
        @role @name 's
        therapist|physio|instructor|demonstrator|clinician|leader 's
    """,
    # somebody doing it
    "doing": """
        i|we|he|she|they|@name am|is|are|'s|have|has|do|does|did|had|was|were|will|would|move|moves|keep|keeps|hold|holds|get|gets|bend|bends|use|uses|make|makes
        i|we|he|she|they|@name always|just|simply do|did|does|hold|have
        my|our|his|her|their @body
        the|our|your|that|this _? @role is|'s|has|does|did|was|do|are
    """,
    # somebody, before what they do
    "subject": """
        i|we|he|she|they|@name
        @name .? @name
        @role @name
        sister|matron|nurse|coach|sensei|sergeant|captain|sir|miss|teacher|mum|mom|dad|gran|grandma|nan|grandad
        the|our|your|that|this|my|each|these|those _? @role
        wee|young|old|big|little|dear|lovely @name
    """,
    # what is done, of any sort
    "deed": "do|does|did|done|doing|@handle|@orient|%ing|hit|hits|made|make|makes|use|uses|used|perform|performs|have|has|had",
    # a part of a body that is there to be seen
    "part": """
        my|our|his|her|their _? @body|@kit|@spatial|stance|pose|posture|grip|footwork|outline|silhouette|rhythm|moves|movement|timing|stroke|line|tempo|setup|swing|release|finish|landing|entry|technique|form
        this|these _? @body
        @name|@role 's _? @body|@kit|@spatial|stance|pose|posture|grip|footwork|moves|movement|timing|stroke|line
    """,
    # what a movement does that can be seen
    "seen_move": "wobble|tuck|dip|twist|turn|tilt|bend|lift|drop|swing|flick|switch|change|shift|lean|hinge|curl|roll|sway|rock|kick|snap|bounce|pause|hitch|wiggle|jerk|slip|arch|difference|mistake|error|fault|trick|hook|scoop|circle|cross|release|catch|transition|angle|gap",
    # a showing, by any name
    "showing": "run-through|runthrough|walk-through|walkthrough|demo|demonstration|taster|preview|showing|masterclass|dry-run|display|rendition",
    "look": "watch|watching|observe|observing|view|clock|study|eyeball|peep|scope|inspect|examine|regard",
    "look_at": """
        look|looking|glance|peek|peep|gaze|stare|squint|peer again? at|over
        look|looking|glance|peek|peep closely|carefully|again|over|across|up|down|back|hard at|to
        check|suss|scope out
        cop|have|take|get|grab|steal|sneak|catch a|another _? look|gander|peek|peep|glance|butcher's|glimpse|squint|dekko|nosey|eyeful at|of
        eyes on|over|up
        eyes over|up|back|front here|there on|to
        feast your eyes on
        keep|fix|train|set|have|put|get|pin|glue|lock|rest|cast|lay|clap|run|rivet|nail|stick a|an|one|half|your|those|both|all half|an*2 eye|eyes|peepers|gaze|sights on|onto|to|at|over
        look|looking|glance|refer to|toward|towards
        look|looking|glance|peer|gaze across|along|over|up|down|round|around at|to|toward|towards
        train|turn|aim your attention|eyes|gaze to|on|at
        eyeball|behold|regard|note
        pay|close|your attention to
    """,
}

_PHRASES = Phrases(
    LEXICON,
    _STANDS_FOR,
    # "like this": what follows and what stands before decide
    manner="""
        just? like this|so|thus
        just so $
        <!, in this way $
    """,
    unlike="""
        <!do|does|did|would|will [ not like that|this ]
        <!@number like that
    """,
    this="""
        i|@name|we am|is|'s|are [ going to? do it|one|this ] !again|with|next|today|tomorrow
        i|we will|shall [ do one|a|two|three ] slow|slowly|first|for|of|so
        @name|i and i|@name will [ do _*3 ] $
        do|doing [ this ] with @poss _? !eyes @body $|,|.|not
        go|goes like [ this|so ]
    """,
    # whatever is measured against somebody who is seen
    against="""
        [ as|how|where|like @name %s|does|did|is|has|had|plants|holds ]
        [ no|not? @dim|@adverb than @name|mine|hers|me|i ]
        [ match|matches|matching|mirror|mirrors|equal|resemble|resembles|approach mine|@name|hers|theirs ]
        [ learn|nick|steal|copy|crib|pinch it|this|that off|from the|your|our|a _? @role ]
        learn|get|pick|take|steal|nick [ it up? off|from me ]
        [ per|following|after my|@name|the 's|our? example|lead|fashion|instructor|coach ]
        [ the one to copy|follow|watch|imitate|mirror ]
    """,
    props="""
        [ thus ] $|,|.|;
        [ voilà|voila|presto|ecco ] , a|an|the
        [ here is|'s one i ]
        here is|'s [ a good|bad|proper|wrong|right|better one ] $|,|.
        [ sneak|quick|live|free preview|showing|demo|demonstration|display ]
        [ mime|miming it|this|the ]
        [ eyes here|over ] a|please|.|,|!|for
        [ eyes up|over|this|down|front here|way ]
        [ spot|tell|see|notice what i|my|she|he|@name ]
        [ catch|see|spot|clock that ] ?
        you would|will|might|may have [ seen|noticed|spotted ] my|me|her|him|@name
    """,
    signals="""
        [ @name|@role and i will|shall|are do|run|take|show|give|go|perform|try|walk _? ]
        [ @name|@role will|is|'s going? to? run|walk|go through it|this|that|them ] first|once|slowly|so|for
        [ @name|@role will|is|'s going? to? take|run|walk|talk you|us|them through ] it|this|them|that|$
        i will|am going? to? [ do|run|perform|go it|one|this|two|three|through ] once|first|slowly|slow|for|now|without|so|again
        [ you have just|already|all? seen|watched ] !a|the|your|any|enough|no|better|worse|nothing|it|them|him|her|our|my
        someone|somebody|anyone|volunteer|who|@name to|can|could|will|would|please*2 [ demonstrate|show|model ] ?|.|,|for|it|this|us
        the [ sort|kind of @body @name|i|he|she 's|have|has|is ] got|like|here
        kind|sort|bit of [ this ] $|,|.
        [ be|go|move more|as? like @name|me|him|her|mine ]
        [ more|less|just|exactly|bit|nearly|almost|quite|much like @name|me ]
        not|nearly|exactly|almost|quite|more|less|something|round|up|over|down|through|out [ like that|these|this ] with|,|.|;|$|and
        [ @name 's version|way|technique|form|one ] is
        [ like hers|his|theirs ] do|does|is|are|did
        ^ [ look at this|that ] $
        [ here is|'s the|a _? wrong|right|good|bad|proper|correct one|way ] !to|for
        not [ this ] , it
        not _*4 , it is|'s [ this ] $
        [ in the manner|way|style|fashion demonstrated|shown|modelled|illustrated ]
        [ feast your _ on ]
        [ rubberneck|rubbernecking ]
    """,
    # what somebody does, whoever it is and whatever they do
    wider="""
        do|doing|try|repeat|follow|copy|match|echo|mirror|then|now|just|, [ what|whatever|everything|however {subject} happens|happen|is|'s|are|am|do|does|did|was|were ]
        [ the way|manner {subject} just|always|have|has|'s|is|am|are|was*2 {deed} ] it|them|that|this|one|mine|hers|his|with|in|on
        i|we will|am|'m just|now|going|to*3 [ run|walk|mark|step|dance|swim|row it|this|that|them|everything through ]
        i will|am|'m just|now|going|to*3 [ do the|a|one|my first|couple|few|slow|quick|practice|demo|rep|round|set|side one|ones|rep|reps|first? ] !together|with|for|at|on|in|tomorrow|today
        ^ [ mark|try|walk|run|take|rehearse|practise|practice|dance|step|swim|row|do|go it|this|that|them|one|through through|again|out|once|slowly|now*2 with|alongside|behind|after me|us|@name ]
        ^ [ tail|trail|ghost|shadow|track|stalk|ape|clone|mimic|mirror|match me|him|her|@name ] !to|in|back|home|on
        ^ [ ghost|shadow|track|tail|trace|echo|clone|nick|pinch|steal|borrow my|his|her|our ] _? @body|rhythm|shape|stance|pose|posture|grip|footwork|moves|movement|timing|stroke|line|tempo|swing|technique|form|style|position|route
        ^ [ nick|pinch|steal|borrow|copy hers|his|mine|theirs ]
        can|could|may|should|will|to|just|then [ tail|trail|ghost|shadow|ape|clone|mimic|mirror me|him|her|@name ] !to|in|back|home|for
        ^ [ with|after|behind me now|first|again|please*2 ] :|.|,|!|$
        [ synchronise|synchronize|synchronised|synchronized|sync|synced|synch up? with|to {who} ]
        [ this|that kind|sort|type|style of curve|bend|arc|arch|shape|line|motion|movement|action|swing|twist|turn|grip|stance|pose|tilt|lean|rhythm|bounce|wiggle|feel|swing|tempo|path|effect ] ,|.|not|with|$|here
        {look} {part}
        <!to|not|i|we ^ {look_at} {part}
        ^ [ check|notice|note|see|spot|catch|dig|cop|peep|peek|admire|witness|view {part} ]
        ^ [ peep|clock|dig|cop|scope the depth|height|width|angle|bend|arch|line|shape|form|technique|timing|footwork|tempo|@body ]
        @body|@handle|@orient [ like hers|his|mine|ours|theirs ] $|,|.|and|with
        @name|@role , [ demonstrate|demo|model|give us a ] !hand|call|ring
        ^ [ match|mirror|follow|copy|echo me|@name|him|her ] rep|step|beat|stroke|move|for|move
        ^ [ having|after|once watched|seen|watching|seeing {who} ]
        ^ [ follow me ] for a|one|two|three|eight|four|:|through|down|up
    """,
    # half sentences, clinic sheets, classes in full cry
    spoken="""
        [ as shown|seen|taught|practised|practiced|rehearsed|done|learnt|learned|instructed|performed at|in|during|on|by appointment|clinic|class|session|sessions|physio|therapist|hospital|ward|therapy|surgery|studio|training|nurse|monday|tuesday|wednesday|thursday|friday|saturday|sunday|rehearsal|practice|workshop|lesson ]
        i|@name|we|he|she will|'s|'ll|am|going|to*3 go|start|begin|lead|goes|starts|begins|leads first? ,|and|then*2 [ you|everyone|everybody|all follow|copy|join|repeat|mirror|do ]
        ^ [ my|mine turn ,? and|then*2 your|yours turn ]
        ^ [ what|which|where|how _? did|do|does|is|are|'s|was|were my|mine ] _? @body|feet
        ^ [ look|watch|observe and learn|copy|repeat|follow|do|try ]
    """,
    # the speaker's own body, and good and bad ways of doing it
    said="""
        [ more|less|just|exactly|bit|nearly|almost|quite|much like him|her|them|hers|his ] ,|.|!|$|and|than
        ^ breathe|move|go|lift|turn|change|start|stop|switch|sit|drop|step|push|pull|swing|rise|bend|raise|lower|stand|kneel _*3 [ when|as|while|once|whenever my @body ]
        ^ @handle|@orient|change|switch|breathe|rise|swap|bow|begin _*2 [ when|as|once|whenever|after i do|@handle|@orient|change|switch|swap|rise|begin ] $|,|.
        ^ [ none of this|that ] , please
        [ as was|is just? demonstrated|shown|modelled ]
    """,
    # cribbing, first goes, and who saw it
    crib="""
        [ crib|cheat|cog|copy|learn|nick _? off|from your|the|her|his|me|@name|a ] !notes|list
        [ example|version from|by @name|me|the ]
        [ {showing} from|by me|@name|us|the|your|our ]
        [ let me go|try|start|have|take _? first ] !through
        ^ [ see|spot|clock that|this|the _? {seen_move} ]
        who|anyone|anybody|everyone|everybody [ saw|spotted|spot|noticed|notice|caught|catch|clocked|see ] it|that|what|how|where !the|they|you
        the [ height|depth|width|speed|angle|spot|place|point|level|distance|side|way i|he|she|@name {deed} it|mine|them ]
        [ as it|they is|are on|with me|@name ]
    """,
    # what the best of the class do, and "this" as all that is said
    example="""
        {look} the|that|those _? @role
        wrong|mistake|error|fault|version|technique|movement|motion|action|move is|'s [ this ] $
    """,
    # the same verb for the speaker, later in the sentence: code compares them
    echo="""
        [ where|when|how|as|like|whenever|wherever i|we|he|she|@name _ ]
    """,
    # one verb for the speaker and for the reader: code compares them
    turns="""
        [ i _ _? ,|and*2 you _ ] $|,|.|and|it|them
    """,
    # "watch", with whatever may be watched: code decides
    watching="""
        [ watch|watching|observe|observing ]
    """,
    perceived="""
        you|you'all [ can|could|will|should|might all|clearly|often|already? see|notice ] how|i|my|where|me !much|far|well|it|you|your|good|quickly|long
        you [ see|notice how|where ] my|i|@name|he|she|mine|his|her|the
        you [ see the|this|that ] @body|bend|way|angle|arch|line|gap|shape|curve|tilt|dip|lift|turn|twist|position
        you [ saw ] me|him|her|@name|it|that|how
        can|could|did|do everyone|everybody|anyone|you|they all|guys|lot*2 [ see|spot|catch ] me|my|him|her|@name|how|what|where|that|it|this|$
        ^ [ note|notice|see|spot the|this|that _*3 ] of? &my|his|her
        ^ [ note|notice how|where ] i|my|the|he|she|they|@name|it|her|his
        ^ [ look ] at? how|what
        ^ [ see|watch it|this first|again|done|once ]
        [ check this|that|it|him|her|me|these out ]
        [ here is|'s what|how it|that|this|a _? _? looks|look|should ] like? !today|next|on|in
        [ here is|'s what|how i|we|mine|she|he do|does|mean|want ] like? !today|next|by|you|for|with|about|when|to|on
        [ show everyone|everybody|the|us|them ] ,|.|!|how|group|class|what|your
        @name|@role|i|we am|is|'s|are|will going? to? [ demonstrate|model|mime|show ]
        i|@name|she|he [ just did ] !that|a|my
        [ what|everything|anything|whatever|all i|@name|she|he have|is|'s|am just? done|doing ] !my|to|for|about|at|all
        [ what|everything|anything|whatever i|@name do|does|did ] ,|.|$|now|on|with|is|you
        [ same thing|move|one i did ]
        ^ [ trace|track|echo|shadow|match|follow|copy my ] !@heard
        <!not [ reproduce|replicate|imitate|mimic|copy that|this|it|those|these ] on|with|in|at|exactly|as
        [ the way she|he|they|@name ] !and
        [ compare|contrast mine|hers|his|@name ]
        ^ [ ape|mimic|imitate|parrot|copy|shadow the|a|your _ ] !sound|noise|memo|cat|tree|motion|note|way|action|link|bird|movement|text|list|chart
        ^ [ do|not this ] $|,|.
        not [ this ] $
    """,
    watch="""
        {look} {who}
        {look} {theirs}
        <!you|i|we {look_at} {who}
        {look_at} {whose}
        {look_at} how|what|where
        [ see|notice how|the|where|what|that ] my|mine|i|we|he|she|his|her|@name
        <!to ^ [ see ] &?
        ^ [ watch ] $
        [ watch|see ] it|this done|happen
        ^ see|notice {theirs}
        ^ [ notice where|how|what ] my|mine|i
        can|did|do|could [ you all|guys? see ] that|this|how|what|where|it|the|my|mine|me $
        [ you|do|did|can you? see|saw|catch|spot|notice ] how|what|where|that|the|@name my|mine|i|way|he|she|they
        you [ see ] $
        did|do you [ see|catch|clock|get|spot ] that|it|my
        you|you'all|all can|could|will|should|might|may [ see|notice ] me|my|mine
        [ notice|see|watch how|where|what @adverb? i|my|he|she|@name ]
    """,
    invitation="""
        [ as|like|where|what you|we|you'all|everyone can|could|will|may|might|should all|clearly|all? see|observe|notice ] !the|a|if|whether
    """,
    view="""
        [ feast your eyes ]
        [ show|shows him|her|us|them ] <him|her|us|them &.|!|,|how|what
    """,
    copy="""
        <!to|i|will|shall|may|can [ do mine|hers|his ] !@body|before|after|on|at|in|every|first|later|now
        i|@name|he|she will|'ll|go|'m|am _*6 then|and|,*2 you|everyone [ copy|imitate|mimic|follow|mirror|repeat|echo ]
        [ do|does|go|goes likewise ]
        !@poss [ copy|copying|mimic|mimicking|imitate|imitating|mirror|mirroring|ape|aping|emulate|emulating|shadow|shadowing|parrot|mime|impersonate|replicate|reproduce|duplicate {who} ]
        [ copy|copying|mimic|mimicking|imitate|imitating|mirror|mirroring|ape|aping|emulate|emulating|shadow|shadowing|parrot|replicate|reproduce|duplicate|match|matching {whose} ]
        [ copy|mimic|imitate|mirror|ape|emulate|shadow|parrot|replicate|reproduce|duplicate|match what|whatever|exactly|how|everything|every|each|all ]
        [ follow|following me|us|along|mine|him|her|@name|therapist|physio|clinician|demonstrator ] !@body|to|@heard|home|'s|on|up
        [ follow|following my|his|her|their|our !@heard _ ] !@heard
        [ follow|take|pick|get my|her|his|their|the|our lead|cue|pattern|example|rhythm|moves ] from?
        [ do|doing as|what|whatever|exactly|just|like|everything i|we|he|she|they|@name ]
        [ same|along as|with me ]
        follow-my-leader|follow-the-leader|copycat
        [ keep|stay in? time|step|up|sync|unison with me|@name ] !on|out|aloud
    """,
    compare="""
        [ the|exactly|just same? way|how|manner {doing} ]
        [ just|exactly|much|same? as|like {doing} ]
        [ like we|they|he|she did|do|does|showed ] !last|yesterday|before|in
        [ same|identical|similar|exactly|just as|to|like mine|ours|me|@name|his|hers|theirs ]
        [ as|like|to|with mine|ours ]
        [ same _? _? as {shown} ] !yesterday
        [ as|like|the|where|how|what|whatever mine|@name just|always|already? landed|did|does|goes|went|is|was|sits|sat|stays|lands|finishes|ends|ended|starts|stands|lies|moves|moved|hangs|points|bends|do ]
        [ à|a la me|@name ]
        [ the same _*3 as|like mine|me|i|@name ]
        [ like|as|where|whatever|wherever mine do|does|did|has|have|goes|go|stays|stay ]
        [ what|whatever|where|wherever my|mine|his|her @body|'s _? do|does|are|is|doing ]
        [ like|as @name 's ]
        [ how i|we|he|she|@name have|has|am|is|'s|do|does|did|hold|holds|got ]
        [ the|this|that _? @spatial|shape|line|stance|pose|tempo|rhythm|grip|arc i am|have|use|take|make ] !said|told|just|been
        [ as i _ mine|it|them ]
        [ borrow|steal|pinch|nick my|@name|his|her 's? _ ] <@body|rhythm|shape|stance|pose|posture|grip|footwork|moves|movement|timing|stroke|line|tempo|swing|technique|form|style|position|arms|legs
    """,
    show="""
        i|we|he|she|@name|@role will|'ll|am|'m|can|could|shall|is|'s|would just|now|also|quickly? going|about|happy|? to? [ show|showing|demonstrate|demonstrating|demo|model|illustrate ]
        [ show|shows|showed|shown|showing you ] $
        @name|@role , _? [ show us|them|everyone|everybody ]
        @name|@role , _? [ show the lads|boys|girls|class|group|rest|others|team|kids|new ]
        [ i|we|he|she|@name just|already|have|had? showed|shown|demonstrated|demoed|modelled|modeled ] !the|him|them|a|an|her|my|great|up|no|his
        [ demonstration|demonstrations|demo|demos ] !of|that
        [ act|acts|acting|acted it|this|that out ]
    """,
)

_GOES_ON = LEXICON.mask("pause", "prep", "leader", "number", "poss", "not", "me")
_GO_ON = frozenset(
    "with while when until till for if as every each through without because or all twice once again please on off up down"
    " today throughout whenever slowly gently times the your you i we it then instead either too everyone both".split()
)
_HEARD = frozenset(
    "sound sounds sounding feel feels felt feeling days day weeks week mornings morning evening night nights weather times sessions session"
    " something thing things stuff exercise exercises work workouts numbers results count counts counting say says said saying talk"
    " plan plans song music rhythm beat people men women always usually never weight nothing anything load work much goes-like".split()
)


def find(sentence: Sentence) -> Iterator[Span]:
    """The marked words of a sentence."""
    words = sentence.words
    for first, last, note in _PHRASES.find(sentence):
        if _harmless(sentence, first, last, note):
            continue
        if words[first] == "see" and last == first + 1 and words[last : last + 1] == ["?"] and (first == 0 or words[:first] == ["you"]) and not _SHOWING & set(sentence.earlier):
            continue
        if (note == "turns" or (words[first] == "i" and words[last - 2 : last - 1] == ["are"])) and not _by_turns(words[first:last]):
            continue
        if note == "echo" and (words[last - 1] not in words[max(0, first - 6) : first] or words[last - 1] in _NO_MOVE | _SPEECH | _SMALL_WORDS):
            continue
        if note == "manner" and words[last - 1] in ("this", "so", "thus") and "like" in words[first:last]:
            if not _stands_alone(sentence, first, last):
                continue
        elif (note == "watching" and not _watching(sentence, first)) or (note in ("watch", "watching", "perceived", "copy", "wider", "signals") and _not_asked(sentence, first)) or (note == "unlike" and words[first] == "like" and not _negated(sentence, first)):
            continue
        yield first, last


def _by_turns(inside: list[str]) -> bool:
    """Whether speaker and reader do the same: "I throw, you throw"."""
    mine, yours = _verb(inside, inside.index("i") + 1), _verb(inside, inside.index("you") + 1)
    return mine == yours and mine not in _SPEECH and (mine not in _NO_MOVE or (mine == "do" and "it" in inside))


def _verb(words: list[str], place: int) -> str:
    """The verb from `place` on, after "am", "are" and "will"."""
    return words[place + 1] if words[place] in ("am", "are", "will") and place + 1 < len(words) else words[place]


_SMALL_WORDS = frozenset("the a an to of in on at up down and or it is be not you your my".split())
_NO_MOVE = frozenset("shaking sweating laughing smiling panting dying puffing hurting tired rest stop will am are can have do want need know like feel know would could should did get think see pay win lose promise".split())


def _stands_alone(sentence: Sentence, first: int, last: int) -> bool:
    """Whether "like this" ends there: no noun follows, nothing that is heard or felt stands before."""
    words = sentence.words
    if last < len(words):
        if words[last] == ":":
            return False
        if not (sentence.classes[last] & _GOES_ON or words[last] in _GO_ON):
            return False
    before = words[max(0, first - 2) : first]
    return not (before and (before[-1] in _HEARD or "feel" in before or "always" in before))


_PLACED = frozenset("sitting standing stood sat kneeling facing face lying waiting spotting".split())
_WHENS = frozenset("if when whenever while as by before after once why how".split())
_SEEN_BY_YOU = frozenset("see saw seen watched watch witnessed observe observed noticed notice".split())
_WHO_LIKES = frozenset("you i we they would".split())
_LOOKED = frozenset("look looking watch watching copy copying follow following mimic match mirror study".split())
_SOUNDED = frozenset("rattling ringing tapping banging clapping calling singing counting whistling playing saying".split())
_LONG = frozenset("day days week weeks month months year years shift morning afternoon term".split())
_READ_ONLINE = frozenset("more tips updates news recipes weekly daily free the".split())
_TOLD = frozenset("ask asks asked asking tell tells told wonder wondered know knows knew explain explained remember forget recall like love is".split())
_WHEN_AND_WHERE = frozenset("on at in every before after when most myself while between".split())
_ANOTHER_TIME = frozenset(
    "phone telephone call email text letter message monday tuesday wednesday thursday friday saturday sunday tomorrow month months week weeks appointment".split()
)
_PLANS = frozenset("do doing take walk run go mark".split())
_FEELS = frozenset(
    "feel feels felt feeling respond responds react reacts cope copes settle settles behave behaves fare fares morning tomorrow today tonight monday"
    " tuesday wednesday thursday friday saturday sunday week recover recovers tolerate tolerates heal heals like likes suit suits".split()
)


def _of_another_time(sentence: Sentence, first: int, last: int) -> bool:
    """Whether what is announced is for another day, or for the ear: "I'll take you through it by phone"."""
    words = sentence.words
    around = words[max(0, first - 4) : last]
    return bool(_PLANS & set(words[first:last])) and bool({"me", "i", "we"} & set(around)) and bool(_ANOTHER_TIME & set(_rest(words, last, 8)))


def _rest(words: list[str], last: int, most: int = 40) -> list[str]:
    """The words after the marked ones, up to the next pause."""
    after = words[last : last + most]
    return after[: next((place for place, word in enumerate(after) if word in PAUSES), len(after))]


_SPEAKER = frozenset("i we he she they you".split())
_BETWEEN = frozenset("am is are 's was were have has had will would can could do does did just always also never really still only already be been like".split())
_MIND = frozenset(
    "say says said saying tell tells told telling ask asks asked asking think thinks thought thinking mean means meant want wants wanted suggest suggests suggested"
    " advise advises advised recommend recommends recommended prescribe prescribes prescribed explain explains explained explaining describe describes described"
    " write wrote written feel feels felt hope believe know knows decide decides promised charge charges see talk talks reckon reckons need needs prefer prefers"
    " love loves hear heard hearing grading getting looking asked paying selling hoping worried mentioned preach wish call calls remember".split()
)


def _of_speech_or_thought(sentence: Sentence, first: int, last: int) -> bool:
    """Whether somebody says or thinks it, and nobody does it: "do what she told you", "you see what I'm saying"."""
    words = sentence.words
    for place in range(first, min(last + 1, len(words) - 1)):
        if words[place] in _SPEAKER or (sentence.classes[place] & _PERSON and place >= last - 1):
            verb = place + 1
            while verb < len(words) and words[verb] in _BETWEEN:
                verb += 1
            if verb >= last and verb < len(words) and words[verb] in _MIND:
                return words[verb] not in ("mean", "want", "like", "see", "need") or words[verb + 1 : verb + 2] not in ([], ["."], [","], ["it"])
    return False


_LONG_AGO = frozenset(
    "yesterday ago college school uni university always usually years year decades career twenties thirties youth childhood army navy lockdown finland sweden japan"
    " america australia lad girl kid winter summer".split()
)


def _of_another_day(sentence: Sentence, first: int, last: int) -> bool:
    """Whether a likeness is to what was done at another time or place: "as we always do", "what I did in college"."""
    words = sentence.words
    inside = set(words[first:last])
    if words[max(0, first - 1) : first] == ["not"] and "did" in inside and "last" in words[last : last + 2]:
        return True
    return not _SHOWN & inside and bool(_SPEAKER & inside) and bool(_LONG_AGO & {*words[first : last + 1], *_rest(words, last, 5)})


_SHOWN = frozenset("shown showed show demonstrated demoed demonstrating demonstrates modelled modeled demo demos seen saw watched".split())
_DOING = frozenset("doing it this that these those them mine ours so here now there with".split())
_TO_SHOW = frozenset(
    "how what this that these one ones it again now first once twice slowly slow quickly exactly another two three a an in on from with by before so if up really quickly properly then and"
    " difference next second third last whole right wrong correct proper other others exercise action drill version technique routine sequence steps form my our best basic"
    " squat lunge plank press push-up pushup press-up deadlift row bridge hinge swing turn step roll jump kick stretch twist stance grip pose hold balance landing"
    " carry curl hang jab hook serve stroke entry movement move moves motion shape rhythm tempo position start finish setup set-up".split()
)


def _shows_no_movement(sentence: Sentence, first: int, last: int) -> bool:
    """Whether what is shown is a thing, a place or a fact: "I'll show you the door", "show us your progress"."""
    words, classes = sentence.words, sentence.classes
    place = next((place for place in range(first, last) if words[place] in ("show", "shows", "showing")), None)
    if place is None:
        return False
    if words[place] == "shows" and place and not (classes[place - 1] & _PERSON or words[place - 1] in ("he", "she", "who", "one", "and", "then")):
        return True
    place += 1
    if place < len(words) and words[place] in ("you", "us", "them", "him", "her", "me", "everyone", "everybody", "people", "youse", "'em", "folks"):
        place += 1
    rest = _rest(words, place, 6)
    if not rest:
        return False
    if rest[0] == "where" or (rest[0] == "how" and {"far", "much", "many", "strong", "good"} & set(rest[1:2])):
        return not any(bits & _BODY for bits in classes[place : place + 7]) and "to" not in rest
    if rest[0] in ("the", "a", "some"):
        return not _PAPERS.isdisjoint(rest[1:4])
    if rest[0] in ("your", "my", "their"):
        return not any(word in _TO_SHOW or classes[place + 1 + far] & (_BODY | LEXICON.bits["spatial"]) for far, word in enumerate(rest[1:4])) or (
            "not" in words[max(0, first - 2) : first + 1]
        )
    return rest[0] in _NOT_SHOWN


_PAPERS = frozenset(
    "door research data plan till results result rest ropes evidence figures numbers paperwork exit studies study website app sheet toilets toilet changing gym building kitchen proof"
    " letter forms graph log diary receipt money bill certificate bruise scar email text list timetable sights office showers shower locker lockers benefits benefit calendar scars progress"
    " respect courage love patience person".split()
)
_NOT_SHOWN = frozenset("someone somebody anyone who all any round around out love mercy respect why nothing everything plenty no some his their".split())
_PERSON = LEXICON.mask("name", "role")


def _asked_of_a_feeling(words: list[str], first: int, last: int) -> bool:
    """Whether "see how" asks what is felt, and not what is seen: "see how the knee feels in the morning"."""
    if words[first] not in ("see", "notice", "note", "observe", "you") or not {"how", "what", "the"} & set(words[first : last + 1]):
        return False
    after = words[last : last + 7]
    stop = next((place for place, word in enumerate(after) if word in PAUSES), len(after))
    return "my" not in after and bool(_FEELS & set(after[:stop]))


_AFTER_DEMO = frozenset("follows follow given shows starts begins coming x2 x3".split())
_AFTER_A_NOUN = LEXICON.mask("function", "prep", "leader", "be", "modal", "pause", "not", "me", "they", "det")
_SHOWN_ON_PAPER = LEXICON.mask("media")
_TOUCHED = frozenset("patting tapping touching pointing pressing".split())
_OF_THE_READER = frozenset("you your yourself many much easy".split())
_INSIDE = frozenset("breath breathing mood weight floor ground heart pulse warmth ache feeling tension".split())
_ESCORT = frozenset("to out round around who results way door your off up".split())
_BY_EAR_OR_TOUCH = frozenset("touch tap pat squeeze nudge push pull knock bang press count call say clap tug".split())
_SPEECH = frozenset("sing count say clap breathe hum shout talk speak repeat chant tap read".split())


def _harmless(sentence: Sentence, first: int, last: int, note: str) -> bool:
    """Whether words that often show a movement do something else here."""
    words = sentence.words
    count = len(words)
    inside = words[first:last]
    before = word_at(words, first - 1, ".")
    after = word_at(words, last, ".")
    if _is_idiom(sentence, first, last) or _of_another_time(sentence, first, last) or _asked_of_a_feeling(words, first, last):
        return True
    if _of_speech_or_thought(sentence, first, last) or _of_another_day(sentence, first, last) or _shows_no_movement(sentence, first, last):
        return True
    if _of_cause_or_time(sentence, first, last) or _of_company(sentence, first, last) or _of_talk_in_passing(sentence, first, last):
        return True
    story = inside[-1] == "got" and after == "my" and not any(bits & _BODY for bits in sentence.classes[last + 1 : last + 2])
    if inside[:2] in (["how", "i"], ["how", "we"]) and (before in _TOLD or story):
        return True
    if "i" in inside and (_PLACED & {*inside, after} and not {"how", "what"} & set(inside)) and (inside[0] in ("the", "that", "this") or "face" in (*inside, after) or "facing" in (*inside, after)):
        return True  # where the speaker is: the kind "viewer" has it
    if inside[0] == "see" and ((inside[1:] == ["me"] and before in ("you", "and", "to") and (after in PAUSES or after in _WHEN_AND_WHERE)) or before in ("i", "we")):
        return True
    if inside[:3] in (["as", "they", "will"], ["as", "it", "will"]) and "as" in words[max(0, first - 8) : first]:
        return True
    if inside in (["do", "this"], ["does", "this"]) and (before in ("to", "why") or after == "by" or (before in ("you", "it", "that", "this") and (words[first - 2 : first - 1] or ["."])[0] in _WHENS)):
        return True
    if inside[-1] in ("line", "lines") and inside[0] in ("look", "watch", "follow", "looking", "following") and note != "spoken":
        return True
    if inside[0] == "like" and before in ("looks", "seems", "sounds") and not (before == "looks" and _RATED & set(words[: first - 1]) and words[first - 2] not in _HEARD):
        return True
    if inside[-1] in ("what", "whatever") and after == "you" and not _SEEN_BY_YOU & set(words[last : last + 4]):
        return True
    if inside[0] in ("imitate", "mimic", "ape") and inside[1:2] == ["a"] and not sentence.classes[last - 1] & LEXICON.mask("role", "body"):
        return True
    if inside[0] in ("notice", "note", "see", "spot", "feel") and "your" in words[last : last + 3] and "my" not in inside and "mine" not in inside:
        return True
    if inside[0] in ("mirror", "copy", "shadow", "echo", "match") and before in ("the", "a", "an", "your", "this", "that"):
        return True
    if inside[:2] == ["not", "like"] and before in ("may", "might", "will", "could", "can"):
        return True
    if inside[0] == "like" and inside[-1] in ("that", "this") and (before in _WHO_LIKES or (before == "not" and (words[first - 2 : first - 1] or ["."])[0] in ("do", "does", "did", "would", "may", "might", "will"))):
        return True  # the verb: "if your neck doesn't like that"
    if inside[-1] in ("demo", "demos", "demonstration") and len(inside) == 1 and not (after in PAUSES or after in _AFTER_DEMO or sentence.classes[last] & _AFTER_A_NOUN):
        return True
    if inside[0] == "copy" and {"file", "files", "folder", "example", "template", "text", "link", "code", "key", "page"} & set(inside) and after in ("in", "to", "from", "at"):
        return True
    if inside[-1] in ("were", "was") and inside[:2] in (["as", "they"], ["as", "it"]):
        return True
    if inside[:2] == ["do", "mine"] and before in ("nor", "neither", "so"):
        return True
    if (inside[0] in ("here", "this", "that", "it") or "way" in inside) and ":" in words[last : last + 6]:
        colon = words.index(":", last)
        if count - colon > 3:
            return True  # the words follow: "this is how I'd like you to breathe: in for four"
    if note in ("watch", "watching", "perceived", "against", "this", "props"):
        asked = inside[-1] if inside[-1] in ("how", "what", "where") else after if after in ("how", "what", "where") else ""
        if asked:
            place = last if inside[-1] == asked else last + 1
            following = words[place : place + 3]
            if _OF_THE_READER & set(following[:2]) or (following[:2] and following[0] == "the" and following[1] in _INSIDE):
                return True
            if (asked == "how" and following and following[0] in ("far", "long", "well", "quickly", "soon", "warm", "good", "that")) or following[:2] == ["i", "mean"]:
                return True
        if ("your" in words[last : last + 4] and "happens" in inside) or (inside[0] == "look" and inside[-1] in ("look", "at", "how", "what", "where") and "you" in words[last : last + 3]):
            return True
        if inside[-1] == "me" and after in ("again", "in", "on", "at", "tomorrow", "after", "next", "before"):
            return True
        if inside[-1:] == ["see"] and ((after == "," and before == "you") or before == "'s"):
            return True
        if inside == ["watch"] and after == "it" and words[last + 1 : last + 2] not in (["again"], ["once"], ["done"], ["go"], ["closely"], ["first"], ["as"], ["carefully"], ["happen"]):
            return True
    if inside[-1] in ("show", "shows", "showed", "shown") or (inside[-1:] in (["you"], ["them"], ["the"]) and "show" in inside):
        rest = words[last : last + 2]
        person = after in ("you", "them", "him", "her", "us", "everyone")
        target = rest[1] if person and len(rest) > 1 else after
        if target in _ESCORT or "results" in words[last : last + 3]:
            return True
        if (inside[0] in ("he", "she", "they") and after not in ("you", "us", "how", "it", "me", "this", "that", "the", "what", ".", ",")) or after in ("nothing", "courage"):
            return True
    if before == "who" and inside[0] == "follow":
        return True
    if "stick" in inside or (inside[0] in _LOOKED and sentence.classes[last - 1] & _SHOWN_ON_PAPER):
        return True  # a drawing: the kind "picture" has it
    if "where" in inside and "am" in inside and _TOUCHED & {*inside, after}:
        return True  # a place: the kind "pointing" has it
    if inside[0] in ("note", "notice", "see") and {"minute", "clock", "needle", "pointer"} & set(words[last : last + 4]):
        return True  # a reading: the kind "sight-check" has it
    if inside[:2] == ["the", "way"] and before in ("face", "facing", "back", "go", "walk", "all"):
        return True
    if inside[0] in _LOOKED and (before == "not" or words[first - 2 : first] == ["not", "be"]):
        return True
    if "i" in inside and "am" in inside and _SOUNDED & {*inside, after}:
        return True
    if inside == ["as", "they", "are"] or (after in ("some", "most", "others") and inside[-1] == "showed") or (before == "it" and inside[0] == "shows"):
        return True
    if inside[0] in ("copy", "follow", "following", "shadow") and {"me", "us"} & set(inside):
        if after in ("in", "so", "?", "on", "home") or (after == "for" and _READ_ONLINE & set(words[last + 1 : last + 3])) or (inside[0] == "following" and after == "?"):
            return True
    if inside[-1] == "me" and after == "for" and _LONG & set(words[last + 1 : last + 4]):
        return True
    if inside[0] in ("when", "as", "whenever", "if") and _BY_EAR_OR_TOUCH & set(inside):
        return True
    if inside[0] in ("as", "like") and "we" in inside and after in ("last", "yesterday", "before", "in", "on", "at"):
        return True
    if inside[0] == "like" and before in ("feel", "feels", "felt", "sound", "sounds"):
        return True
    if inside[0] in ("what", "everything", "anything") and after in ("is", "was") and "is" not in inside and "you" not in inside:
        return True
    return "showing" in inside and bool({"film", "films", "cinema", "programme"} & set(words[:first]))


_DEGREES = frozenset("much many strong far well good easy hard often quickly tired long little".split())
_SPANS = frozenset("ever week weeks month months day days year years fortnight".split())
_DEALINGS = frozenset("take book pay fill inject measure log join register download".split())
_RATED = frozenset("correct right proper wrong incorrect".split())
_OWN_PART = frozenset("half part share best bit own".split())
_AILS = frozenset("sleeping eating coping feeling getting".split())


def _of_talk_in_passing(sentence: Sentence, first: int, last: int) -> bool:
    """Whether it is a turn of everyday speech: "as fast as we can", "take my arm", "look at that, not one late"."""
    words = sentence.words
    inside = words[first:last]
    before = word_at(words, first - 1, ".")
    after = word_at(words, last, ".")
    then = word_at(words, last + 1, ".")
    bits_then = sentence.classes[last + 1] if last + 1 < len(words) else 0
    if inside[0] == "as" and (after in ("can", "could", "concerned") or (after in ("am", "'m") and then == "concerned") or then == "concerned"):
        return True
    if inside == ["like", "that"] and before == "more" and (after in (".", "and", ",", "!", "then")):
        return True
    if inside[-2:] == ["like", "this"] and "about" in (before, inside[0]) and {"came", "come", "comes"} & set(words[max(0, first - 2) : first]):
        return True
    if inside[-2:-1] == ["do"] and after in _OWN_PART:
        return True
    if inside[0] == "show" and after == "what" and then == "you":
        return True
    if inside[0] == "mirror" and inside[-1] == "all" and after == "of":
        return True
    if inside[0] == "watch" and "your" in inside and ("neighbour" in inside or "neighbor" in inside):
        return True
    if inside == ["look", "at", "that"] and after == "," and then in ("not", "no", "all", "you", "we", "nobody"):
        return True
    if inside[:2] == ["see", "what"] and inside[-1] == "i" and after in ("mean", "meant", "said"):
        return True
    if inside[0] == "where" and inside[-1] in ("has", "have") and after in ("a", "an", "the") and not bits_then & _BODY:
        return True  # what somebody owns: "where Rose has the key"
    if inside[-2:] == ["notice", "how"] or inside == ["notice", "how"] or inside == ["did", "you", "notice", "how"]:
        if {"your", "yours"} & set(words[last : last + 10]):
            return True  # felt in the reader's own body
    if inside[0] == "how" and before in ("ask", "asks", "asked") and after in _AILS:
        return True
    if inside == ["demonstration"] and before == "by" and "not" in words[max(0, first - 2) : first]:
        return True
    if inside[0] == "look" and before == "i":
        return True
    if inside == ["get"] and after == "that" and then == "way":
        return True
    rest = words[last : last + 4]
    if inside[-1] == "showed" and after == "me":
        return True  # shown to the writer
    if inside[-1] in ("seen", "noticed", "see", "notice") and after == "how" and then in _DEGREES:
        return True
    if inside[0] == "like" and inside[-1] in ("this", "that") and after == "for" and _SPANS & set(rest):
        return True
    if inside[-1] == "saw" and after == "me" and then in ("on", "at", "last", "in"):
        return True
    if inside[:1] == ["watching"] and words[max(0, first - 2) : first] in (["i", "am"], ["i", "'m"]):
        return True
    if "show" in inside and (tail := [*inside[-1:], *words[last : last + 5]]) and "how" in tail and "to" in tail:
        if _DEALINGS & set(tail[tail.index("to") + 1 : tail.index("to") + 2]):
            return True
    if inside[0] == "as" and before in ("proud", "happy", "pleased", "keen", "nervous", "tired", "busy", "old"):
        return True
    verb = first if inside[0] == "copy" else first - 1
    if verb > 1 and words[verb] == "copy" and words[verb - 2] in ("the", "my", "our") and not sentence.classes[verb - 1] & _BODY:
        return True  # told of others: "the children copy everything I do"
    done = last + 1 if inside[-1] in ("do", "did") else last + 2
    return inside[:3] == ["the", "way", "they"] and before in ("is", "'s") and words[done : done + 1] in (["at"], ["in"], ["round"], ["up"])


_IDIOMS = (
    "see fit", "you the ropes", "let 's do this", "look at us ,", "look at you ,", "i mean when", "cheats", "show them who", "look at it this way", "look at the time", "i have modelled nothing",
    "copy that .", "copy that !", "see what i am", "going on in", "see where we", "watch how you", "note how many","show my age", "copy that , coach", "you see , the", "at your diary", "look at the calendar", "see , it", "show of hands", "show me the",
    "monkey see", "monkey do", "by example")
_SHOWING = frozenset("i my mine me watch look like here this show shows demo mine's hers his she he him her".split())
_BODY = LEXICON.bits["body"]
_CARE = frozenset(
    "ball shuttle shuttlecock puck horizon ground for out over that your ego it's step edge kerb curb gap door road traffic time clock timer tv telly television film video videos game games match numbers number"
    " display screen scales weight pace water weather news corner floor stairs grandchildren kids football rugby telly's space tongue language dial needle gauge seconds"
    " second label counter monitor scoreboard readout baby pot clips clip people it's".split()
)
_SEEN = LEXICON.mask("me", "they", "name", "role")


def _is_idiom(sentence: Sentence, first: int, last: int) -> bool:
    """Whether words belong to a saying: "lead by example"."""
    around = " ".join(sentence.words[max(0, first - 2) : last + 4])
    return any(idiom in around for idiom in _IDIOMS)


def _of_cause_or_time(sentence: Sentence, first: int, last: int) -> bool:
    """Whether "as", "how" and "the way" open a clause of their own: "as he is new", "the way we train has changed"."""
    words = sentence.words
    inside = words[first:last]
    rest = _rest(words, last)
    opens = first == 0 or words[first - 1] in PAUSES
    asked = inside[1:] if inside[0] in ("just", "exactly") else inside
    if len(asked) > 2 and asked[0] in ("as", "like") and asked[1] in _SPEAKER:
        if asked[-1] in ("has", "have", "had") and rest[:1] and rest[0] in ("a", "an", "the", "no", "such", "some", "two", "been", "to"):
            return True
        if asked[-1] in ("am", "is", "are", "was", "were", "'s") and rest and rest[0] not in _DOING and not (rest[0].endswith("ing") and rest[0] not in _NO_DEED):
            return opens or rest[0] in ("getting", "leaving", "being")
        if asked[-1] in ("do", "does", "did") and rest and rest[0] in ("in", "at", "every", "when", "last", "before", "on", "each", "most") and "now" not in rest:
            return True
    return first == 0 and inside[:2] == ["the", "way"] and len(rest) > 1 and "my" not in {*inside, *rest[:3]}


_ADVICE = frozenset("advice instructions instruction rules rule guidance orders diet plan programme program protocol guidelines".split())
_NO_DEED = frozenset("getting being becoming leaving saying going having feeling running-late talking speaking".split())
_THOSE_WHO_LOOK = frozenset("people they folk folks nobody strangers who everybody's kids boys lads girls neighbours neighbors".split())
_LOOKS = frozenset("look looking looks stare staring gawp gawping watching".split())


def _of_company(sentence: Sentence, first: int, last: int) -> bool:
    """Whether it is told that people look, or how somebody looks on: "people are looking at me", "don't look at me like that"."""
    words = sentence.words
    inside = words[first:last]
    before = word_at(words, first - 1, ".")
    after = word_at(words, last, ".")
    clause = words[max(0, first - 5) : first]
    if inside[0] in _LOOKS and {"me", "us", "him", "her", "them"} & set(inside[-1:]):
        if after in ("like", "as", "funny", "that", "strangely", "sideways", "and") and (after != "as" or words[last + 1 : last + 2] != ["i"]):
            if after != "and" or before in _THOSE_WHO_LOOK:
                return True
        if before in _THOSE_WHO_LOOK or (inside[0].endswith("ing") and (before in ("there", "not", "from", "just") or (before in ("are", "is", "be", "'s") and _THOSE_WHO_LOOK & set(clause)))):
            return True
    if inside[-1] in ("that", "this", "so") and "like" in inside and {"look", "looking", "talk", "talking", "speak", "live", "think", "sleep", "act"} & set(clause):
        return True
    if inside[0] == "like" and inside[-1] in ("that", "this", "those", "these") and sentence.classes[first - 1] & _BODY and words[max(0, first - 2) : first - 1] in (["a"], ["an"], ["any"], ["no"]):
        return True
    if inside[0] in ("like", "as") and before in ("me", "us", "him", "her", "them") and _LOOKS & set(clause):
        return True
    if inside[-1:] == ["see"] and after in ("me", "us", "him", "her") and (
        (words[last + 1 : last + 2] and words[last + 1] in ("at", "on", "again", "soon", "before", "after", "next", "instead", "monday", "tuesday")) or "hear" in sentence.earlier
    ):
        return True
    if {"see", "seen", "saw", "notice"} & set(inside):
        rest = set(_rest(words, last))
        if {"says", "thinks", "say", "news", "online", "times", "research", "studies", "trials", "patients", "clients", "log", "diary"} & rest and not {"my", "i", "me", "mine"} & set(inside[-1:]):
            return True
        if {"says", "thinks"} & rest or words[last : last + 2] in (["that", "does"], ["this", "does"], ["we", "go"]) or (inside[-1] == "what" and after == "that") or (inside[-1] == "how" and after == "we"):
            return True
    if inside[0] == "how" and _TOLD & set(words[max(0, first - 3) : first]) and {"me", "him", "them", "us", "her"} & set(words[max(0, first - 2) : first]) and {"got", "sets", "did", "has", "does"} & set(inside):
        return True
    if inside[0] in ("follow", "following") and (_ADVICE & set(words[first + 1 : last + 2]) or "line" in inside):
        return True
    if inside[-1] in ("that", "this") and inside[0] == "look" and after == "!":
        return True
    if inside[0] in ("when", "as") and not _SHOWN & set(inside) and {"went", "gave", "was", "timer", "bell", "beeps", "whistle", "buzzer", "phone"} & set(inside):
        return True
    return inside[0] in ("demo", "demonstrate", "show", "model") and words[max(0, first - 2) : first] in (["do", "not"], ["will", "not"], ["would", "not"], ["need", "to"], ["not", "to"])


def _watching(sentence: Sentence, place: int) -> bool:
    """Whether "watch" asks to look at what somebody does, and not to take care or to read a clock."""
    words, classes = sentence.words, sentence.classes
    before = word_at(words, place - 1, ".")
    if classes[place - 1] & LEXICON.mask("det", "poss", "not") and place:
        return False  # "your watch"
    if words[place].endswith("ing") and before not in ("keep", "stand", "by", "start", "just", "from", ".", ","):
        return False
    if not (place == 0 or classes[place - 1] & LEXICON.mask("leader", "pause") or before in ("you", "to", "me", "all", "everyone", "keep", "by", "you'll", "can", "will", "on", "back")):
        return False
    following = [word for word in words[place + 1 : place + 4]]
    if not following or following[0] in (".", "!", ";", ":"):
        return before not in ("to", "not")
    head = following[0]
    if head in ("it", "this", "again", "closely", "carefully", "once", "one", "and", "as", "while", "how", "what", "where", "first", "until", "then", "now", ",", "both", "another"):
        return not (head == "it" and len(following) > 1 and following[1] in ("!", "on", "with", "if", "when", ".", "there")) and "space" not in following and not (
            (head == "where" and "your" in following) or (head == "how" and {"you", "your"} & set(following))
        ) and not (head in ("one", "both") and {"knee", "foot"} & set(following))
    if head in _CARE:
        return False
    if head in ("the", "his", "her", "their", "my", "our", "that", "those", "these", "a", "each"):
        return not (_CARE & set(following)) and (head != "a") and not (head == "the" and not classes[min(place + 2, len(words) - 1)] & LEXICON.mask("body", "kit", "role", "name") and not classes[min(place + 3, len(words) - 1)] & LEXICON.mask("body", "role", "name"))
    return bool(classes[place + 1] & _SEEN)


_NOT_ASKED = frozenset("no-one nobody from without nothing needn't instead rather never stopped stop quit hate hates love loves for".split())


def _not_asked(sentence: Sentence, first: int) -> bool:
    """Whether looking is told of, or ruled out, and not asked for: "no need to watch me"."""
    words = sentence.words[max(0, first - 4) : first]
    return (
        any(word in _NOT_ASKED for word in words[-2:])
        or ("not" in words and any(word in ("need", "have", "to") for word in words))
        or ("no" in words and "need" in words)
    )


def _negated(sentence: Sentence, place: int) -> bool:
    before = sentence.words[max(0, place - 4) : place]
    return "not" in before and before[-2:] not in (["do", "not"], ["does", "not"], ["did", "not"], ["would", "not"])


_SAY_IT = {
    "hip": "send your hips back until you feel a pull behind your thighs",
    "elbow": "keep your elbow touching your ribs as your hand rises to your shoulder",
    "knee": "bend your knee until your thigh is level with the floor",
    "shoulder": "draw your shoulders down, away from your ears",
    "hand": "bring your hands to the height of your breastbone, a fist away from it",
    "arm": "lift your arms out to the sides until your hands are level with your shoulders",
    "wrist": "keep the back of your hand in line with your forearm",
    "thumb": "wrap your thumb round the handle, over your fingers",
    "grip": "wrap your thumb round the handle, over your fingers",
    "chin": "draw your chin straight back, as if to make a double chin",
    "head": "keep the back of your head in line with your spine",
    "back": "keep your back flat from your tailbone to the back of your head",
    "foot": "plant the whole foot, big toe, little toe and heel",
    "heel": "lift the heel as high as it goes, and lower it until it touches the floor",
    "toe": "turn your toes out, left toward 11 o'clock, right toward 1",
    "leg": "slide the leg straight back until only the toes touch the floor",
}
_AS_FORMS = {"hips": "hip", "elbows": "elbow", "knees": "knee", "shoulders": "shoulder", "hands": "hand", "arms": "arm", "wrists": "wrist", "thumbs": "thumb"}
_AS_FORMS |= {"feet": "foot", "heels": "heel", "toes": "toe", "legs": "leg", "spine": "back", "fingers": "hand", "finger": "hand"}


def suggest(sentence: Sentence, first: int, last: int) -> str:
    """What to write instead of the marked words."""
    words = sentence.words
    if words[first] in ("as", "see", "like") and "see" in words[first:last] and len(words) - (last - first) > 6:
        return "Leave these words out: they tell the reader that something is missed. Say what there is to see, if the sentence does not yet."
    for place in (*range(first, len(words)), *range(first - 1, -1, -1)):
        part = _AS_FORMS.get(words[place], words[place])
        if part in _SAY_IT and (part != "back" or is_part(sentence, place)):
            return f"Say what the {words[place]} should do, from where to where: \"{_SAY_IT[part]}\"."
    return "Say which part of the body moves, which way, and where it stops, by touch or by landmark: \"until the back of your hand touches your thigh\"."


ENGLISH = Kind(
    name="demonstration",
    strength="blocks",
    what="The movement is shown, not said.",
    why="The movement is shown here, not said: a reader who is not watching has nothing to follow.",
    suggest=suggest,
    find=find,
    harmless=_is_idiom,
    flag=(
        "[[None of this]], please.",
        "[[As was just demonstrated]], the rear knee goes down.",
        "Pull the rein back [[like so]] and soften your elbow.",
        "Okay recruits, [[eyes on me]].",
        "Just [[copy what]] I'm doing with the poles.",
        "[[Observe the way]] the heel leads.",
        "[[Clock the way]] she turns her head.",
        "The movement looks [[something like this]].",
        "You're doing [[this]] with your shoulders.",
        "[[Just as she's]] doing it.",
        "You[['ll notice]] I don't lock my knees.",
        "[[Watch what happens]] to my knees as I sit.",
        "[[Watch your partner]] do one first.",
        "[[Pay attention to my]] hands.",
        "I'll run through it [[while you watch]].",
        "Can you [[see]] how the wheel turns?",
        "[[Notice the]] bend in my knee.",
        "[[Same thing I did]] on the right.",
        "[[Mirror my movements]].",
        "[[Reproduce that]] on the left.",
        "Feet turned out [[as mine]] are.",
        "[[Compare mine]] with yours.",
        "I'll exaggerate it: [[see]]?",
        "[[Copy your neighbour]] if you get lost.",
        "[[Ape the goalkeeper]].",
        "Feel [[where my finger is]].",
        "Your hips should swing [[no wider than Delroy]]'s.",
        "Play [[copycat]] with the person on the next mat.",
        "Swing it [[the same road as me]].",
        "Mould your hand [[to match mine]].",
        "[[Magda will take you through]] it with her own arms.",
        "[[Here's one I]] made earlier, legs crossed.",
        "[[Eyes up here]] a sec.",
        "Having [[seen mine]], try yours.",
        "[[Per my example]], exhale.",
        "Hold the pen [[in the manner demonstrated]].",
        "[[Feast your peepers on]] that.",
        "Press your knee down [[as your therapist did]] it this morning.",
        "Take the pose [[exactly as Anna]] has it.",
        "[[Watch]] me land; knees over toes.",
        "[[Notice that]] my hands don't move.",
        "It's not [[this]], it's [[this]].",
        "Your hips should move [[like hers]] do.",
        "Cross your legs [[in this way]].",
        "Now do [[what Mrs. Hale does]] with the hoop.",
        "Swing it [[how I swing it]].",
        "[[I'll run it through]] once at full speed.",
        "[[Tail me]] for the first lap.",
        "[[Mark it with me]], no music.",
        "[[I throw, you throw]].",
        "[[Wherever I go, you go]].",
        "[[Sync up with the rower]] beside you.",
        "If you are stuck, [[look to Brenda]].",
        "Make it more [[like hers]].",
        "Technique [[as shown at appointment]].",
        "[[Where are my]] elbows now?",
        "[[Mimic therapist]], both hands.",
        "Go [[like this]] and [[watch]] my elbow.",
        "[[Let me go first]], then you.",
        "[[Who saw]] my heel?",
        "Anchor [[where I anchor]].",
        "[[Cheat off the]] girl beside you.",
        "[[My turn, then your turn]].",
        "Breathe [[when my chest]] rises.",
        "[[Nina will run through it first]], by the door.",
        "[[Steal it off the lad]] beside you.",
        "You want [[the sort of back Rosa's got]] on her.",
        "Anna keeps time. [[Borrow hers]].",
        "Omar, [[show the boys]].",
        "[[Here's what that looks like]].",
    ),
    leave=(
        "Monkey see, monkey do? I would rather you heard it from me.",
        "Coaches lead by example, so I rest on Sundays too.",
        "The nurse will show you how to take it.",
        "Do more than I did at your age.",
        "He showed me his scar.",
        "Have you noticed how much easier the stairs are?",
        "If it hurts like this for a week, ring me.",
        "The children copy everything I do.",
        "You saw me on Tuesday.",
        "Walk as fast as we can.",
        "You can take my arm.",
        "Notice how the ribs widen under your palms.",
        "Did you notice how the wall pushed into your hands?",
        "Watch out for the step by the door.",
        "Watch for numbness in the fingers.",
        "Watch that you don't hold your breath.",
        "Take off your watch and rings first.",
        "Note how your breath changes.",
        "I'll show up at six.",
        "Copy that, coach.",
        "Watch this space for dates.",
        "Watch out, wet floor.",
        "It's not my watch.",
        "Observe the rules of the pool.",
        "Here's how it goes: four steps forward, four back.",
        "What I do is count out loud.",
        "She showed real courage.",
        "I've modelled nothing but cardigans.",
        "Are you following me?",
        "Shadow me for a day if you want to train as a coach.",
        "Repeat after me: I will rest on Sunday.",
        "As we did last week, start with the ankles.",
        "Your shoulders feel like mine did after the move.",
        "You'll see how easy it gets.",
        "You see, muscles are lazy.",
        "Look at us, exercising on a bank holiday!",
        "Look what you've done in six weeks!",
        "Watch that step.",
        "Watch how you go.",
        "Watch your fingers in the door.",
        "Watch for the bus.",
        "Nobody's watching, so dance.",
        "Notice how the breath changes.",
        "So many of you asked how I got my splits.",
        "Here is the one I do on the nursery floor.",
        "See the doctor before you see me.",
        "Bring the heels as near as they will go.",
        "See how the knee feels in the morning.",
        "I'll take you through it by phone on Monday.",
        "The benefits were demonstrated in two trials.",
        "When you do this, breathe out.",
        "Neither do mine.",
        "Copy the file to the embosser.",
        "Look to your GP for advice.",
        "You rest when I rest.",
        "Your neck may not like that.",
        "Repeat what you did on the left.",
        "Aim at the cone I'm rattling.",
        "At the top, face the way we've come.",
        "You don't have to do what the others do.",
        "Don't compare it with the other leg in the mirror each day.",
        "You'll see me on Thursday.",
        "You do whatever she says, end of story.",
        "You see what I'm saying?",
        "We start with the marching, as we always do.",
        "Do this with your shoes off.",
        "That's what I'm after!",
        "Join in when you've got the hang of it.",
        "Notice the shift of weight from heel to toe.",
        "Have you seen how your knee copes with stairs?",
        "I'll show you the door if you're late.",
        "The log shows you how far you've come.",
        "People look at me and think I was born fit.",
        "As he is new, be kind.",
        "The way we train has changed.",
        "Don't talk like that about your legs.",
        "Jane will take you through the forms.",
        "Eat more and see what happens.",
        "This is how the week looks.",
        "Follow the physio's advice on ice.",
        "Borrow my mat.",
        "Don't do what I did in college.",
    ),
)
