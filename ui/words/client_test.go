package words

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"gloamline/timeline"
)

// Ensure that people whose names are hidden are one other rod, or counted.
func TestPartyCountsWhoIsHidden(t *testing.T) {
	for want, rods := range map[string][]string{
		"":                            {},
		"Anna":                        {"Anna"},
		"another rod":                 {AnotherRod()},
		"Anna and another rod":        {"Anna", AnotherRod()},
		"two rods":                    {OtherRod(1), OtherRod(2)},
		"Anna and two other rods":     {"Anna", OtherRod(1), OtherRod(2)},
		"Anna, Colm and 7 other rods": {"Anna", OtherRod(1), OtherRod(2), OtherRod(3), "Colm", OtherRod(4), OtherRod(5), OtherRod(6), OtherRod(7)},
	} {
		assert.Equal(t, want, party(rods))
	}
	assert.Equal(t, "Two rods: 2 fish landed, 1 came off.", GuestSentence([]string{OtherRod(1), OtherRod(2)}, timeline.Totals{Landed: 2, Lost: 1}))
}
