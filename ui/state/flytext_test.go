package state

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"gloamline/journal"
	"gloamline/journal/units"
)

func TestParseDress(t *testing.T) {
	in := func(v float64) journal.Field[units.Length] { return journal.Of(units.LengthOf(v, units.Inch)) }
	slim, full, medium := journal.Of(journal.Slim), journal.Of(journal.Full), journal.Of(journal.MediumBulk)
	dark, pale, mid := journal.Of(journal.DarkTone), journal.Of(journal.LightTone), journal.Of(journal.MediumTone)
	orange := journal.Of("orange")
	for text, want := range map[string]journal.Dress{
		"1in slim dark":              {Length: in(1), Silhouette: slim, Tone: dark},
		"3/4 full pale orange spot":  {Length: in(0.75), Silhouette: full, Tone: pale, HotSpot: orange},
		"1½ black thin":              {Length: in(1.5), Silhouette: slim, Tone: dark},
		"1 1/2\" slim, dark":         {Length: in(1.5), Silhouette: slim, Tone: dark},
		"dark slim 1.5 in":           {Length: in(1.5), Silhouette: slim, Tone: dark},
		"20 mm full grey":            {Length: journal.Of(units.LengthOf(20, units.Millimetre)), Silhouette: full, Tone: mid},
		"medium dark":                {Silhouette: medium, Tone: dark},
		"slim medium":                {Silhouette: slim, Tone: mid},
		"medium medium":              {Silhouette: medium, Tone: mid},
		"medium bulk pale":           {Silhouette: medium, Tone: pale},
		"slim, light green spot":     {Silhouette: slim, HotSpot: journal.Of("light green")},
		"slim dark with orange spot": {Silhouette: slim, Tone: dark, HotSpot: orange},
		"slim dark spot orange":      {Silhouette: slim, Tone: dark, HotSpot: orange},
		"slim dark no hot-spot":      {Silhouette: slim, Tone: dark, HotSpot: journal.None[string]()},
		"2in tube barbless treble":   {Length: in(2), Built: journal.Of("tube"), Barbless: journal.Of(true), Hook: journal.Of("treble")},
		"3 in articulated shank":     {Length: in(3), Built: journal.Of("articulated shank")},
		"1 in, on a hook, double":    {Length: in(1), Built: journal.Of("hook"), Hook: journal.Of("double")},
		"a surface lure, 2 inches":   {Length: in(2), Built: journal.Of("surface")},
	} {
		got, err := ParseDress(text, units.Inch)
		if assert.NoError(t, err, text) {
			assert.Equal(t, want, got, text)
		}
	}
	for text, want := range map[string]string{
		"":               "describe the fly: length, silhouette or tone, such as 1 in slim dark",
		"fly":            "describe the fly: length, silhouette or tone, such as 1 in slim dark",
		"medium":         "medium bulk or mid tone? Say which",
		"slim full":      "“full” contradicts what stands before it",
		"glitter dark":   "“glitter” does not describe a fly here: use length, slim or full, dark or pale, and the colour of a spot",
		"spot":           "say the colour of the spot, such as orange spot",
		"slim dark, 0\"": "",
	} {
		_, err := ParseDress(text, units.Inch)
		if assert.Error(t, err, text) && want != "" {
			assert.Equal(t, want, err.Error(), text)
		}
	}
}

// Ensure that a fly printed reads back the same.
func TestPrintThenParseDress(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var d journal.Dress
		some := func(label string) bool { return rapid.Bool().Draw(t, label) }
		if some("length") {
			unit := rapid.SampledFrom([]units.LengthUnit{units.Inch, units.Millimetre, units.Centimetre}).Draw(t, "unit")
			d.Length = journal.Of(units.LengthOf(float64(rapid.IntRange(1, 320).Draw(t, "n"))/8, unit))
		}
		if some("bulk") {
			d.Silhouette = journal.Of(rapid.SampledFrom(journal.Silhouettes).Draw(t, "s"))
		}
		if some("tone") {
			d.Tone = journal.Of(rapid.SampledFrom(journal.Tones).Draw(t, "t"))
		}
		if some("spot") {
			d.HotSpot = journal.Of(strings.Join(rapid.SliceOfN(rapid.SampledFrom([]string{"orange", "light", "green", "dark", "red"}), 1, 3).Draw(t, "colour"), " "))
		} else if some("no spot") {
			d.HotSpot = journal.None[string]()
		}
		if some("hook") {
			d.Hook = journal.Of(rapid.SampledFrom(journal.Hooks).Draw(t, "h"))
		}
		if some("barb") {
			d.Barbless = journal.Of(some("less"))
		}
		if some("built") {
			d.Built = journal.Of(rapid.SampledFrom(journal.Dressings).Draw(t, "b"))
		}
		if d == (journal.Dress{}) {
			t.Skip("nothing to describe")
		}
		got, err := ParseDress(PrintDress(d), units.Inch)
		require.NoError(t, err, PrintDress(d))
		require.Equal(t, d, got, PrintDress(d))
	})
}

// Ensure that a description finds the fly there is, in whatever unit, and makes only
// one new fly however often it is said on one card; fly and rig are one change.
func TestNewFlyOnRig(t *testing.T) {
	k := newKit(t)
	k.night(false)
	rig := k.add(journal.KindRig, "when", "22:00", "flies.0", "38.1 mm black slim").(journal.Rig)
	assert.Equal(t, journal.Of(k.long.ID), rig.Flies[0].Fly)

	c, err := k.d.AddCard(journal.KindRig)
	require.NoError(t, err)
	c.Set("when", "23:00")
	c.Set("flies.0", "2 in full dark")
	assert.Equal(t, "a new fly: 2 in full dark", field1(t, c, "flies.0").Read)
	c.Set("flies.1", "dark full 2in")
	c.Set("flies.2", "½ full pale")
	assert.Empty(t, field1(t, c, "flies.2").Read)
	rig = k.write(c, nil).(journal.Rig)
	require.Len(t, rig.Flies, 3)
	assert.Equal(t, rig.Flies[0].Fly, rig.Flies[1].Fly)
	assert.Equal(t, journal.Of(k.pale.ID), rig.Flies[2].Fly)
	assert.Len(t, all[journal.Fly](t, k.j), 4)
	require.NoError(t, k.d.Undo())
	assert.Len(t, all[journal.Fly](t, k.j), 3, "one undo takes back both")
	require.NoError(t, k.d.Redo())

	// The point left empty is a fly not noted, since the dropper hangs above it.
	rig = k.add(journal.KindRig, "when", "23:30", "flies.0", "", "flies.1", "½ full pale", "flies.2", "").(journal.Rig)
	assert.Equal(t, []journal.Mounted{{Position: 0}, {Position: 1, Fly: journal.Of(k.pale.ID)}}, rig.Flies)

	// A retired fly is not offered, but stays where it stands.
	retired := k.pale
	retired.Retired = journal.Date{Year: 2026, Month: 1, Day: 1}
	_, err = k.j.Amend(retired)
	require.NoError(t, err)
	c, err = k.d.FishCard(journal.Pull)
	require.NoError(t, err)
	for _, f := range field1(t, c, "fly").Choices {
		assert.NotEqual(t, k.pale.ID.String(), f.Value)
	}
	c = k.amend(rig.Ref())
	assert.Equal(t, "½ in full pale", field1(t, c, "flies.1").Shown())
}
