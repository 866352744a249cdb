package pen

import "gloamline/journal"

// slot is what a word can say; each belongs to some kinds of entry.
type slot uint8

const (
	filler   slot = iota // says nothing here: the, with, was
	hedge                // turns round or doubts what is said: not, nearly, last year
	fishWord             // describes a fish, without a field of its own: kept in the note
	rodName
	poolName
	timeOf
	untilOf
	freeNote
	bankOf
	runVerb
	touchOf
	fishNoun
	flyNoun
	positionOf
	partOf
	speciesOf
	classOf
	sexOf
	liceOf
	hookPlaceOf
	fateOf
	airOf
	tagOf
	weightOf
	lengthOf
	flyWord // silhouette, tone, hook and so on: read by ParseDress
	flyLost
	flyOff
	changeVerb
	lineOf
	leaderNoun
	sinkOf
	surfaceLure
	aloneOf // nothing else is on the leader
	speedOf
	depthOf
	cloudNoun
	cloudOf
	cloudKindOf
	moonNoun
	moonOf
	treesGrey
	stepOf
	windNoun
	windOf
	windFrom
	mistOf
	rainOf
	airNoun
	riverNoun
	levelNoun
	trendOf
	clarityOf
	tempOf
	readyOf
	breakOf
	endOf
	endWhy
	numberOf // a bare number
)

// mask is a set of kinds of entry.
type mask uint16

const (
	inRun mask = 1 << iota
	inContact
	inRig
	inWay
	inSky
	inWeather
	inWater
	inReady
	inBreak
	inEnd
	anyKind mask = 1<<iota - 1
)

// kindOrder is the order in which kinds are tried; it ranks nothing.
var kindOrder = []struct {
	mask mask
	kind journal.Kind
}{
	{inRun, journal.KindRun}, {inContact, journal.KindContact}, {inRig, journal.KindRig}, {inWay, journal.KindWay}, {inSky, journal.KindSky},
	{inWeather, journal.KindWeather}, {inWater, journal.KindWater}, {inReady, journal.KindReady}, {inBreak, journal.KindBreak}, {inEnd, journal.KindEnd},
}

// fits says in which kinds of entry a slot has a field or helps to tell the kind.
var fits = [numberOf + 1]mask{
	filler: anyKind, rodName: anyKind, timeOf: anyKind, freeNote: anyKind,
	untilOf: inRun | inBreak, bankOf: inRun, runVerb: inRun,
	poolName: inRun | inContact | inReady, touchOf: inContact, fishNoun: inContact, partOf: inContact, speciesOf: inContact, classOf: inContact,
	sexOf: inContact, liceOf: inContact, hookPlaceOf: inContact, fateOf: inContact, airOf: inContact, tagOf: inContact, weightOf: inContact,
	lengthOf: inContact | inRig | inWater, flyNoun: inContact | inRig, positionOf: inContact | inRig, flyWord: inContact | inRig,
	flyLost: inRig, flyOff: inRig, changeVerb: inRig, lineOf: inRig, leaderNoun: inRig, sinkOf: inRig, surfaceLure: inRig, aloneOf: inRig,
	speedOf: inWay, depthOf: inWay, cloudNoun: inSky, cloudOf: inSky, cloudKindOf: inSky, moonNoun: inSky, moonOf: inSky, treesGrey: inSky, stepOf: inSky,
	windNoun: inWeather, windOf: inWeather, windFrom: inWeather, mistOf: inWeather, rainOf: inWeather, airNoun: inWeather,
	riverNoun: inWater, levelNoun: inWater, trendOf: inWater, clarityOf: inWater, tempOf: inWeather | inWater,
	readyOf: inReady, breakOf: inBreak, endOf: inEnd, endWhy: inEnd | inBreak, numberOf: inSky | inWeather,
}

// noted says where a word without a field there is kept in the note rather than
// spoiling the reading: the tail of a run, a fish taken in the mist.
var noted = [numberOf + 1]mask{
	fishWord: inContact, partOf: inRun | inReady, poolName: inSky | inWeather | inWater | inBreak | inEnd | inRig | inWay,
	aloneOf: inContact | inRun | inWay | inBreak | inEnd,
	mistOf:  inContact | inRun | inEnd, rainOf: inContact | inRun | inEnd, speedOf: inContact | inRun, depthOf: inContact | inRun,
}

// sense is one meaning of a word.
type sense struct {
	slot  slot
	val   any
	label string // in plain words
}

// tok is one or more atoms read together.
type tok struct {
	span   Span
	from   int // atoms
	to     int
	kind   TokenKind
	senses []sense
	why    string // why it could not be read
}

// allows is the set of kinds of entry in which a token has a place.
func (t tok) allows() (m mask) {
	if t.kind == Space || len(t.senses) == 0 {
		return anyKind
	}
	for _, s := range t.senses {
		m |= fits[s.slot] | noted[s.slot]
	}
	return m
}

func (t tok) has(s slot) bool {
	for _, v := range t.senses {
		if v.slot == s {
			return true
		}
	}
	return false
}
