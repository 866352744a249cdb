package state

import (
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"

	"gloamline/timeline/season"
	"gloamline/ui/scene"
)

// Ensure that several are chosen one after another, left out again, and that any takes all.
func TestSeveral(t *testing.T) {
	list := []Choice{{Value: "6", Label: "Jun"}, {Value: "7", Label: "Jul"}, {Value: "8", Label: "Aug"}}
	var chosen []string
	look := func() (labels []string, value string) {
		choices, v := Several("month", list, chosen)
		for _, c := range choices {
			labels = append(labels, c.Label)
		}
		return labels, v
	}
	choose := func(label string) {
		choices, _ := Several("month", list, chosen)
		for _, c := range choices {
			if c.Label == label {
				chosen = Chosen(chosen, c.Value)
				return
			}
		}
		t.Fatalf("no %q", label)
	}
	labels, value := look()
	assert.Equal(t, []string{"month", "Jun", "Jul", "Aug"}, labels)
	assert.Empty(t, value)
	choose("Jul")
	labels, value = look()
	assert.Equal(t, []string{"month", "Jun", "Jul", "Aug", "and Jun", "and Aug"}, labels)
	assert.Equal(t, "=7", value)
	choose("and Aug")
	labels, value = look()
	assert.Equal(t, []string{"month", "Jul, Aug", "Jun", "Jul", "Aug", "and Jun", "not Jul", "not Aug"}, labels)
	assert.Equal(t, []string{"7", "8"}, chosen)
	choose("Jul, Aug")
	assert.Equal(t, []string{"7", "8"}, chosen)
	assert.Equal(t, "now", value)
	choose("not Jul")
	assert.Equal(t, []string{"8"}, chosen)
	choose("Jun")
	assert.Equal(t, []string{"6"}, chosen)
	choose("month")
	assert.Empty(t, chosen)
}

// Ensure that filters are laid together: what is let through fits each of them, is said whole,
// and is kept from one session to the next.
func TestFiltersCombine(t *testing.T) {
	d, s := inSeason(t)
	beat := s.Offers().Beats[0]
	person := s.Offers().People[0]
	s.Change(func(v *season.View) {
		v.Filter.Months = []time.Month{time.July, time.August}
		v.Filter.Beats = One(beat.Value)
		v.Filter.People = One(person.Value)
		v.Filter.Clients = season.OwnNights
	})
	f := s.Sheet()
	assert.NotZero(t, f.Nights)
	for _, n := range f.List {
		assert.Contains(t, []time.Month{time.July, time.August}, n.Evening.Month)
		assert.Equal(t, beat.Name, n.Beat)
		assert.LessOrEqual(t, n.Rods, 1)
	}
	said := s.FilterSaid()
	for _, part := range []string{"July or August", beat.Name, "rods of " + person.Name, "nights without a client"} {
		assert.Contains(t, said, part)
	}
	for _, x := range s.Tables() {
		assert.Contains(t, string(x.CSV), "July or August", x.Name)
	}
	for card := range SeasonCards {
		s.Pick(card)
		for _, page := range s.Pages(scene.Paper) {
			var text []string
			for _, b := range page.TextBoxes() {
				text = append(text, b.Text.S)
			}
			assert.Contains(t, strings.Join(text, " "), said, "a page of card %d", card)
		}
	}
	kept := s.Encode()
	s.Reset()
	assert.Empty(t, s.FilterSaid())
	s.Decode(kept)
	assert.Equal(t, said, s.FilterSaid())
	_ = d
}
