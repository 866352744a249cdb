package pen

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
