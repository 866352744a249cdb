package state

import (
	"fmt"
	"slices"
	"strings"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/journal/pen"
)

// flies are the choices among the flies there are, by length: those not retired, and
// the one that stands.
func (c *Card) flies(stands journal.ID) []Choice {
	evening := c.d.night.Log.Trip.Evening
	var out []Choice
	seen := map[string]int{}
	stock := slices.Clone(c.stock)
	slices.SortStableFunc(stock, func(a, b journal.Fly) int { return byLength(a.On(evening), b.On(evening)) })
	for _, f := range stock {
		if !f.Retired.IsZero() && !evening.Before(f.Retired) && f.ID != stands {
			continue
		}
		label := DressLabel(f.On(evening))
		if f.Label != "" {
			label += " (" + f.Label + ")"
		}
		if seen[label]++; seen[label] > 1 {
			label += fmt.Sprintf(" no. %d", seen[label])
		}
		out = append(out, Choice{f.ID.String(), label})
	}
	return out
}

// flyOf reads a fly: one that there is by its identity, its label or its
// description, else a new one as described, for whose faults the field answers.
func (c *Card) flyOf(s, field string) (journal.Field[journal.ID], error) {
	if strings.EqualFold(s, noneWord) {
		return journal.None[journal.ID](), nil
	}
	s = pickValue(c.flies(journal.ID{}), s)
	if id, err := geo.ParseID(s); err == nil {
		if slices.ContainsFunc(c.stock, func(f journal.Fly) bool { return f.ID == id }) {
			return journal.Of(id), nil
		}
	}
	dress, err := pen.ParseDress(s, typed(c.d.prefs).Fly)
	if err != nil {
		return journal.Field[journal.ID]{}, err
	}
	evening := c.d.night.Log.Trip.Evening
	for _, f := range slices.Concat(c.stock, c.news) {
		if (f.Retired.IsZero() || evening.Before(f.Retired)) && pen.SameDress(f.On(evening), dress) {
			return journal.Of(f.ID), nil
		}
	}
	key := pen.PrintDress(dress)
	if c.coined[key].IsZero() {
		c.coined[key] = journal.NewID()
	}
	c.newAt[c.coined[key]] = field
	c.news = append(c.news, journal.Fly{ID: c.coined[key], Dresses: []journal.Dress{dress}})
	return journal.Of(c.coined[key]), nil
}

// readNew says that a text makes a new fly.
func (c *Card) readNew(text string) string {
	dress, err := pen.ParseDress(text, typed(c.d.prefs).Fly)
	if err != nil {
		return ""
	}
	for _, f := range c.news {
		if pen.SameDress(f.Dresses[0], dress) {
			return "a new fly: " + DressLabel(dress)
		}
	}
	return ""
}
