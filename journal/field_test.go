package journal_test

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"gloamline/journal"
	"gloamline/journal/units"
)

type answers struct {
	Count journal.Field[int]             `json:"count,omitzero"`
	Word  journal.Field[string]          `json:"word,omitzero"`
	Yes   journal.Field[bool]            `json:"yes,omitzero"`
	Whose journal.Field[journal.ID]      `json:"whose,omitzero"`
	Long  journal.Field[units.Length]    `json:"long,omitzero"`
	When  journal.Field[journal.When]    `json:"when,omitzero"`
	Line  journal.Field[journal.Line]    `json:"line,omitzero"`
	Inner journal.Field[journal.Fate]    `json:"fate,omitzero"`
	Light journal.Field[units.Lux]       `json:"light,omitzero"`
	Where journal.Field[journal.Place]   `json:"where,omitzero"`
	Bank  journal.Field[journal.Bank]    `json:"bank,omitzero"`
	Touch journal.Field[journal.Species] `json:"species,omitzero"`
}

// Ensure that unknown, none and a value each come back from JSON as they were,
// also where the value is the zero of its type.
func TestFieldRoundTrip(t *testing.T) {
	for name, c := range map[string]struct {
		in   answers
		json string
	}{
		"unknown": {answers{}, `{}`},
		"none": {answers{
			Count: journal.None[int](), Word: journal.None[string](), Yes: journal.None[bool](), Whose: journal.None[journal.ID](),
			Long: journal.None[units.Length](), When: journal.None[journal.When](), Line: journal.None[journal.Line](),
			Inner: journal.None[journal.Fate](), Light: journal.None[units.Lux](), Where: journal.None[journal.Place](),
			Bank: journal.None[journal.Bank](), Touch: journal.None[journal.Species](),
		}, `{"count":null,"word":null,"yes":null,"whose":null,"long":null,"when":null,"line":null,"fate":null,"light":null,"where":null,"bank":null,"species":null}`},
		"zero values": {answers{
			Count: journal.Of(0), Word: journal.Of(""), Yes: journal.Of(false), Whose: journal.Of(journal.ID{}), Light: journal.Of(units.Lux(0)),
			Long: journal.Of(units.Length{}), Where: journal.Of(journal.Place{}), Bank: journal.Of(journal.Bank("")),
		}, `{"count":0,"word":"","yes":false,"whose":"","long":{"m":0,"unit":""},"light":0,"where":{"lat":0,"lon":0},"bank":""}`},
		"values": {answers{
			Count: journal.Of(8), Word: journal.Of("orange"), Yes: journal.Of(true), Whose: journal.Of(id("anna")),
			Long: journal.Of(units.LengthOf(1, units.Inch)), When: journal.Of(at(23, 30)),
			Line: journal.Of(journal.Line{Kind: journal.Sinking, Sink: journal.Of(3.5)}), Inner: journal.Of(journal.Kept),
			Light: journal.Of(units.Lux(0.3)), Where: journal.Of(journal.Place{Lat: 55.1, Lon: -4.2}), Bank: journal.Of(journal.Bank("left")),
			Touch: journal.Of(journal.SeaTrout),
		}, `{"count":8,"word":"orange","yes":true,"whose":"` + id("anna").String() + `","long":{"m":0.0254,"unit":"in"},` +
			`"when":{"kind":"exact","lo":"2026-07-04T22:30:00Z","hi":"2026-07-04T22:30:00Z"},"line":{"kind":"sinking","sink_ips":3.5},` +
			`"fate":"kept","light":0.3,"where":{"lat":55.1,"lon":-4.2},"bank":"left","species":"sea trout"}`},
	} {
		t.Run(name, func(t *testing.T) {
			b, err := json.Marshal(c.in)
			require.NoError(t, err)
			assert.Equal(t, c.json, string(b))
			var back answers
			require.NoError(t, json.Unmarshal(b, &back))
			assert.Equal(t, c.in, back)
		})
	}
}

// Ensure that a member nobody knows is not lost inside a field.
func TestFieldRefusesUnknownMembers(t *testing.T) {
	var f journal.Field[journal.When]
	err := json.Unmarshal([]byte(`{"kind":"exact","lo":"2026-07-04T22:30:00Z","hi":"2026-07-04T22:30:00Z","doubt":3}`), &f)
	assert.ErrorContains(t, err, "doubt")
}

func TestFieldReads(t *testing.T) {
	for name, c := range map[string]struct {
		f               journal.Field[int]
		known, none, un bool
		value, or       int
	}{
		"unknown": {journal.Field[int]{}, false, false, true, 0, 7},
		"none":    {journal.None[int](), false, true, false, 0, 7},
		"zero":    {journal.Of(0), true, false, false, 0, 0},
		"value":   {journal.Of(3), true, false, false, 3, 3},
	} {
		t.Run(name, func(t *testing.T) {
			v, ok := c.f.Get()
			assert.Equal(t, c.value, v)
			assert.Equal(t, c.known, ok)
			assert.Equal(t, c.known, c.f.Known())
			assert.Equal(t, c.none, c.f.IsNone())
			assert.Equal(t, c.un, c.f.IsZero())
			assert.Equal(t, c.or, c.f.Or(7))
		})
	}
}

// Ensure that a field reads every JSON value as its type by itself does, texts with escapes
// and other alphabets too.
func TestFieldReadsAsItsType(t *testing.T) {
	readsAsItsType(t, journal.Touch(""))
	readsAsItsType(t, journal.ID{})
	readsAsItsType(t, journal.Date{})
	readsAsItsType(t, 0)
	readsAsItsType(t, false)
	readsAsItsType(t, "")
	readsAsItsType(t, units.Temperature{})
}

func readsAsItsType[T any](t *testing.T, _ T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.OneOf(rapid.String(), rapid.StringMatching(`[ -~]{0,40}`), rapid.StringMatching(`[0-9a-f]{32}`), rapid.Just("2026-07-04")).Draw(t, "text")
		js, err := json.Marshal(text)
		require.NoError(t, err)
		js = rapid.SampledFrom([][]byte{js, []byte("7"), []byte("true"), []byte(`{}`), []byte("\"a\x01\""), []byte(`"a`), []byte(`{"c":3}`)}).Draw(t, "js")
		var want T
		var got journal.Field[T]
		fault, err := json.Unmarshal(js, &want), got.UnmarshalJSON(js)
		require.Equal(t, fault == nil, err == nil, "%s", js)
		if v, ok := got.Get(); ok {
			require.Equal(t, want, v)
		} else {
			require.Error(t, err)
		}
	})
}
