package journal

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"reflect"
)

// Envelope is a record as it lies in the file: its kind and version outside,
// its members in Body. A removed record leaves an envelope that is Gone and
// has no body, so that copies of a journal can be merged later.
type Envelope struct {
	Version int             `json:"v"`
	Kind    Kind            `json:"kind"`
	Trip    ID              `json:"trip,omitzero"`
	ID      ID              `json:"id"`
	Gone    bool            `json:"gone,omitempty"`
	Body    json.RawMessage `json:"body,omitempty"`
}

// Ref returns what the envelope holds.
func (e Envelope) Ref() Ref { return Ref{e.Kind, e.Trip, e.ID} }

// Equal reports whether two envelopes hold the same bytes.
func (e Envelope) Equal(f Envelope) bool {
	return e.Version == f.Version && e.Ref() == f.Ref() && e.Gone == f.Gone && bytes.Equal(e.Body, f.Body)
}

// Tombstone returns what a removed record leaves.
func Tombstone(r Ref) Envelope {
	return Envelope{Version: versions[r.Kind], Kind: r.Kind, Trip: r.Trip, ID: r.ID, Gone: true}
}

// codec of one kind: the present version, how to read its body, and a pure
// upcaster for every earlier version (index 0 lifts version 1 to 2). Any change
// to the members of a kind, also one more member, is a new version: that is how
// an earlier program knows that it must not touch the record.
type codec struct {
	version   int
	read      func([]byte) (Record, error)
	upcasters []upcaster
}

type upcaster = func(json.RawMessage) (json.RawMessage, error)

// addition lifts a body of a version whose successor only has one member more.
func addition(b json.RawMessage) (json.RawMessage, error) { return b, nil }

func reader[T Record](b []byte) (Record, error) {
	var v T
	if err := decode(b, &v); err != nil {
		return nil, err
	}
	return v, nil
}

var codecs = map[Kind]codec{
	KindTrip:      {1, reader[Trip], nil},
	KindBeat:      {2, reader[Beat], []upcaster{addition}}, // notices
	KindFly:       {1, reader[Fly], nil},
	KindBox:       {1, reader[Box], nil},
	KindRule:      {1, reader[HouseRule], nil},
	KindPerson:    {1, reader[Person], nil},
	KindSource:    {1, reader[Source], nil},
	KindSeries:    {1, reader[Series], nil},
	KindTrack:     {1, reader[Track], nil},
	KindDecision:  {1, reader[Decision], nil},
	KindRecipient: {1, reader[Recipient], nil},
	KindRun:       {1, reader[Run], nil},
	KindRig:       {1, reader[Rig], nil},
	KindWay:       {1, reader[Way], nil},
	KindContact:   {1, reader[Contact], nil},
	KindSky:       {1, reader[Sky], nil},
	KindWeather:   {1, reader[Weather], nil},
	KindWater:     {1, reader[Water], nil},
	KindReady:     {1, reader[Ready], nil},
	KindBreak:     {1, reader[Break], nil},
	KindEnd:       {1, reader[End], nil},
	KindPlan:      {1, reader[Plan], nil},
	KindNote:      {1, reader[Note], nil},
	KindPhoto:     {1, reader[Photo], nil},
}

var versions = func() map[Kind]int {
	m := map[Kind]int{}
	for k, c := range codecs {
		m[k] = c.version
	}
	return m
}()

// Seal puts a record into an envelope of the present version.
func Seal(r Record) (Envelope, error) {
	ref := r.Ref()
	body, err := json.Marshal(r)
	if err != nil {
		return Envelope{}, &Error{Op: "write record", Kind: Internal, ID: ref.ID, Err: err}
	}
	return Envelope{Version: versions[ref.Kind], Kind: ref.Kind, Trip: ref.Trip, ID: ref.ID, Body: body}, nil
}

// sealed seals a record and proves that it can be read back: what could not is
// refused now, not found lost in years.
func sealed(r Record) (Envelope, error) {
	e, err := Seal(r)
	if err != nil {
		return Envelope{}, err
	}
	back, err := Unseal(e)
	if err == nil {
		var again Envelope
		if again, err = Seal(back); err == nil && !again.Equal(e) {
			err = errors.New("the record reads back as another")
		}
	}
	if err != nil {
		return Envelope{}, &Error{Op: "write record", Kind: Internal, ID: e.ID, Err: err}
	}
	return e, nil
}

// Unseal reads a record from an envelope, lifting earlier versions to the
// present one. A later version or an unknown kind is refused as Newer, never
// guessed at. A member that the version does not have is Corrupt: no program
// wrote it, and rewriting the record would lose it.
func Unseal(e Envelope) (Record, error) {
	c, ok := codecs[e.Kind]
	if !ok {
		return nil, &Error{Op: "read record", Kind: Newer, ID: e.ID, Err: fmt.Errorf("a record of kind %q is not known to this version", e.Kind)}
	}
	return c.unseal(e)
}

func (c codec) unseal(e Envelope) (Record, error) {
	fail := func(k Fail, format string, a ...any) (Record, error) {
		return nil, &Error{Op: "read record", Kind: k, ID: e.ID, Err: fmt.Errorf(format, a...)}
	}
	if e.Version > c.version {
		return fail(Newer, "a %s of version %d, this program knows %d", e.Kind, e.Version, c.version)
	}
	if e.Version < 1 {
		return fail(Corrupt, "a %s of version %d", e.Kind, e.Version)
	}
	if e.Gone {
		return fail(NotFound, "removed")
	}
	body := e.Body
	for v := e.Version; v < c.version; v++ {
		var err error
		if body, err = c.upcasters[v-1](body); err != nil {
			return fail(Corrupt, "%s of version %d: %w", e.Kind, v, err)
		}
	}
	r, err := c.read(body)
	if err != nil {
		return fail(Corrupt, "%s: %w", e.Kind, err)
	}
	if r.Ref() != e.Ref() {
		return fail(Corrupt, "a %s lies under another identity", e.Kind)
	}
	return r, nil
}

// Prototype returns an empty record of the kind, for tests that loop over all.
func Prototype(k Kind) (Record, bool) {
	c, ok := codecs[k]
	if !ok {
		return nil, false
	}
	r, err := c.read([]byte("{}"))
	if err != nil {
		return nil, false
	}
	return reflect.Zero(reflect.TypeOf(r)).Interface().(Record), true
}
