package state

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/journal/pen"
)

// Ensure that a fly is offered by what a person looks for: length and look, then how
// it is armed, without saying that a hook is on a hook.
func TestDressLabel(t *testing.T) {
	for text, want := range map[string]string{
		"1 in slim dark barbless double on a hook": "1 in slim dark, barbless double",
		"1 in slim dark on a hook":                 "1 in slim dark, on a hook",
		"1 in slim dark barbless on a hook":        "1 in slim dark, barbless on a hook",
		"2 in full pale treble tube, orange spot":  "2 in full pale, treble tube, orange spot",
		"slim dark no spot":                        "slim dark, no spot",
		"tube":                                     "tube",
	} {
		d, err := pen.ParseDress(text, "in")
		require.NoError(t, err, text)
		assert.Equal(t, want, DressLabel(d))
	}
	assert.Equal(t, "fly", DressLabel(journal.Dress{}))
}

// Ensure that the flies of a card stand in the order of their lengths, whatever the
// unit, those of unknown length last.
func TestFliesByLength(t *testing.T) {
	k := newKit(t)
	k.night(false)
	for _, text := range []string{"10 mm full dark", "2 in slim pale", "full dark", "1 in slim dark barbless double on a hook"} {
		d, err := pen.ParseDress(text, "in")
		require.NoError(t, err)
		_, err = k.j.Log(journal.Fly{ID: journal.NewID(), Dresses: []journal.Dress{d}})
		require.NoError(t, err)
	}
	c, err := k.d.AddCard(journal.KindRig)
	require.NoError(t, err)
	var got []string
	for _, o := range field1(t, c, "flies.0").Choices[2:] {
		got = append(got, o.Label)
	}
	assert.Equal(t, []string{"10 mm full dark", "½ in full pale", "¾ in slim dark", "1 in slim dark, barbless double", "1½ in slim dark", "2 in slim pale", "full dark"}, got)
}
