package state

import (
	"slices"
	"strconv"
	"strings"

	"gloamline/journal"
	"gloamline/journal/pen"
	"gloamline/journal/units"
	"gloamline/ui/words"
)

// How a change of a fly that nights have known is meant.
const (
	correctIt   = "correct"
	changedFrom = "from"
)

// flyDraft is a fly with one way it is tied, and the box it lies in.
type flyDraft struct {
	fly   journal.Fly
	dress journal.Dress
	box   journal.ID
	means string // correctIt or changedFrom
	from  journal.Date
}

// FlyCard returns a card for a fly, or for a new one if the ID is zero. Changing how a fly
// is tied that nights have known asks whether that corrects it, on all nights, or is so
// from an evening on.
func (d *Desk) FlyCard(id journal.ID) (*Card, error) {
	stands := journal.Fly{ID: id, Dresses: []journal.Dress{{}}}
	isNew := id.IsZero()
	if isNew {
		stands.ID = journal.NewID()
	} else {
		f, err := journal.One[journal.Fly](d.j, id)
		if err != nil {
			return nil, err
		}
		stands = f
	}
	boxes, _ := journal.All[journal.Box](d.j)
	today := d.Boxes().Today()
	used := !isNew && d.flyUsed(id)
	c := &Card{d: d, ref: stands.Ref(), isNew: isNew, faults: map[string]string{}, coined: map[string]journal.ID{}, newAt: map[journal.ID]string{}}
	c.title = words.ChangeTitle(words.KindName(journal.KindFly))
	if isNew {
		c.title = words.AddTitle(words.KindName(journal.KindFly))
	}
	n := &flyDraft{}
	c.reset = func() {
		*n = flyDraft{fly: stands, dress: stands.On(today), from: today}
		if i := slices.IndexFunc(boxes, func(b journal.Box) bool { return slices.Contains(b.Flies, stands.ID) }); i >= 0 {
			n.box = boxes[i].ID
		}
	}
	c.load = func() bool {
		f, err := journal.One[journal.Fly](d.j, stands.ID)
		if err == nil {
			stands = f
			boxes, _ = journal.All[journal.Box](d.j)
		}
		return err == nil
	}
	changed := func() bool { return !journalEqual(n.dress, stands.On(today)) }
	c.batch = func() journal.Batch { return n.batch(boxes, isNew && c.isNew, stands.On(today), changed()) }
	c.dressFields(n)
	c.add(idPick("box", "Box", "in none", func() journal.ID { return n.box }, func(id journal.ID) { n.box = id }, func() []Choice {
		var out []Choice
		for _, b := range boxes {
			out = append(out, Choice{b.ID.String(), b.Name})
		}
		return out
	})).fill = func() string {
		if b := d.Boxes().picked; b.Kind == journal.KindBox {
			return b.ID.String()
		}
		return ""
	}
	means := c.add(&field{
		Field: Field{ID: "means", Label: "This", Kind: Pick},
		text:  func() string { return "" },
		choices: func() []Choice {
			return []Choice{{"", words.NotSaid()}, {correctIt, words.CorrectFly()}, {changedFrom, words.FlyFrom()}}
		},
		put:    func(s string) error { n.means = s; return nil },
		hidden: func() bool { return c.isNew || !used || !changed() },
	})
	means.want = func() string {
		if n.means == "" {
			return words.SayWhatFlyMeans()
		}
		return ""
	}
	c.add(&field{
		Field:  Field{ID: "from", Label: "From the evening of", Hint: "4 July 2026"},
		text:   func() string { return printDate(n.from) },
		put:    func(s string) (err error) { n.from, err = pen.ParseDate(s, today); return err },
		hidden: func() bool { return n.means != changedFrom || means.hidden() },
	})
	return c.begin(), nil
}

// dressFields are those of how a fly is tied.
func (c *Card) dressFields(n *flyDraft) {
	d := &n.dress
	c.add(lengthField("length", "Length", "1 in or 25 mm", &d.Length, typed(c.d.prefs).Fly))
	c.add(pickField("silhouette", "Silhouette", &d.Silhouette, journal.Silhouettes, ""))
	c.add(pickField("tone", "Tone", &d.Tone, journal.Tones, ""))
	c.add(textField("hot_spot", "Hot-spot", "orange, or none", &d.HotSpot, func(s string) (string, error) { return s, nil }, func(s string) string { return s }))
	c.add(stringPick("built", "Built as", &d.Built, journal.Dressings))
	c.add(stringPick("hook", "Hook", &d.Hook, journal.Hooks))
	c.add(yesNoField("barbless", "Barbless", &d.Barbless))
	c.add(&field{Field: Field{ID: "label", Label: "Your word for it", Hint: "if you have one"},
		text: func() string { return n.fly.Label }, put: func(s string) error { n.fly.Label = strings.TrimSpace(s); return nil }})
	c.add(linesField("note", "Note", &d.Note)).more()
}

func stringPick(id, label string, p *journal.Field[string], all []string) *field {
	return pickField(id, label, p, all, "")
}

// journalEqual compares two ways of tying, but for the evening from which they hold.
func journalEqual(a, b journal.Dress) bool {
	a.From, b.From = journal.Date{}, journal.Date{}
	return a == b
}

// batch is what the draft comes to: the fly, and the boxes it left or came to.
func (n *flyDraft) batch(boxes []journal.Box, isNew bool, stood journal.Dress, changed bool) journal.Batch {
	f := n.fly
	f.Dresses = slices.Clone(f.Dresses)
	switch {
	case isNew:
		f.Dresses = []journal.Dress{n.dress}
	case !changed:
	case n.means == changedFrom:
		n.dress.From = n.from
		at, found := slices.BinarySearchFunc(f.Dresses, n.from, func(d journal.Dress, on journal.Date) int {
			switch {
			case d.From == on:
				return 0
			case d.From.Before(on):
				return -1
			}
			return 1
		})
		if found {
			f.Dresses[at] = n.dress
		} else {
			f.Dresses = slices.Insert(f.Dresses, at, n.dress)
		}
	default:
		n.dress.From = stood.From
		if i := slices.IndexFunc(f.Dresses, func(d journal.Dress) bool { return d.From == stood.From }); i >= 0 {
			f.Dresses[i] = n.dress
		}
	}
	b := journal.Batch{Put: []journal.Record{f}}
	lies := slices.ContainsFunc(boxes, func(x journal.Box) bool { return x.ID == n.box && slices.Contains(x.Flies, f.ID) })
	if lies {
		return b
	}
	for _, x := range boxes {
		had := slices.Contains(x.Flies, f.ID)
		if had || x.ID == n.box {
			x.Flies = slices.DeleteFunc(slices.Clone(x.Flies), func(id journal.ID) bool { return id == f.ID })
			if x.ID == n.box {
				x.Flies = append(x.Flies, f.ID)
			}
			b.Put = append(b.Put, x)
		}
	}
	return b
}

// BoxCard returns a card for a box, or for a new one if the ID is zero.
func (d *Desk) BoxCard(id journal.ID) (*Card, error) {
	return recordCard(d, journal.Box{ID: id, Use: journal.Uses[0]}, id, func(b *journal.Box, id journal.ID) { b.ID = id }, func(c *Card, b *journal.Box) {
		c.add(&field{Field: Field{ID: "name", Label: "Name", Hint: "Night box"}, text: func() string { return b.Name },
			put: func(s string) error { b.Name = strings.TrimSpace(s); return nil }})
		c.add(&field{Field: Field{ID: "use", Label: "For", Kind: Pick}, text: func() string { return b.Use },
			choices: func() []Choice {
				var out []Choice
				for _, u := range journal.Uses {
					out = append(out, Choice{u, u})
				}
				return out
			},
			put: func(s string) error { b.Use = s; return nil }})
	})
}

// RuleCard returns a card for a house rule, or for a new one if the ID is zero.
func (d *Desk) RuleCard(id journal.ID) (*Card, error) {
	return recordCard(d, journal.HouseRule{ID: id}, id, func(r *journal.HouseRule, id journal.ID) { r.ID = id }, func(c *Card, r *journal.HouseRule) {
		c.add(&field{Field: Field{ID: "words", Label: "In words", Hint: words.UsualRule("short")}, text: func() string { return r.Words },
			put: func(s string) error { r.Words = strings.TrimSpace(s); return nil }})
		c.add(&field{Field: Field{ID: "at_grey", Label: "When", Kind: Pick}, text: func() string { return r.AtGrey },
			choices: func() []Choice {
				return []Choice{{"", words.RuleLight("")}, {"before", words.RuleLight("before")}, {"after", words.RuleLight("after")}}
			},
			put: func(s string) error {
				if r.AtGrey = s; s != "" { // the trees, then, and not lux
					r.Light, r.Dark = journal.Field[units.Lux]{}, journal.Field[units.Lux]{}
				}
				return nil
			}})
		byLux := func() bool { return r.AtGrey != "" }
		c.add(luxField("light_lux", "Darker than", &r.Light)).hidden = byLux
		c.add(luxField("dark_lux", "And not darker than", &r.Dark)).hidden = byLux
		unit := typed(d.prefs).Fly
		c.add(lengthField("min", "Length from", "1 in", &r.Min, unit))
		c.add(lengthField("max", "Shorter than", "1 in", &r.Max, unit))
		position := c.add(&field{Field: Field{ID: "position", Label: "On the leader", Kind: Pick},
			text: func() string {
				if p, ok := r.Position.Get(); ok {
					return strconv.Itoa(p)
				}
				return ""
			},
			put: func(s string) error {
				r.Position = journal.Field[int]{}
				if p, err := strconv.Atoi(s); err == nil {
					r.Position = journal.Of(p)
				}
				return nil
			}})
		position.choices = func() []Choice {
			out := []Choice{{"", words.AnyPosition()}}
			for i := range journal.MaxFlies {
				out = append(out, Choice{strconv.Itoa(i), words.PositionName(i)})
			}
			return out
		}
		for _, s := range journal.Silhouettes {
			c.add(memberTick("silhouettes."+string(s), upperFirst(words.SilhouetteName(s)), &r.Silhouettes, s, journal.Silhouettes))
		}
		for _, t := range journal.Tones {
			c.add(memberTick("tones."+string(t), upperFirst(words.ToneName(t)), &r.Tones, t, journal.Tones))
		}
		c.add(tickField("practice", "Common practice", &r.Practice))
	})
}

// memberTick says whether a value is one of those a rule allows; none ticked is all.
func memberTick[T comparable](id, label string, list *[]T, v T, order []T) *field {
	return &field{
		Field: Field{ID: id, Label: label, Kind: Tick},
		text: func() string {
			if slices.Contains(*list, v) {
				return Yes
			}
			return ""
		},
		put: func(s string) error {
			var out []T
			for _, o := range order {
				if o == v && s == Yes || o != v && slices.Contains(*list, o) {
					out = append(out, o)
				}
			}
			*list = out
			return nil
		},
	}
}

// luxField is a light, typed in lux.
func luxField(id, label string, p *journal.Field[units.Lux]) *field {
	return textField(id, label, "0.3 lx", p, func(s string) (units.Lux, error) {
		n := strings.TrimSpace(strings.TrimSuffix(strings.TrimSuffix(strings.ToLower(s), "lux"), "lx"))
		v, err := strconv.ParseFloat(n, 64)
		if err != nil || !(v > 0 && v < 2e5) {
			return 0, wrongf("“%s” is not a light: write 0.3 or 0.3 lx", s)
		}
		return units.Lux(v), nil
	}, func(v units.Lux) string { return strconv.FormatFloat(float64(v), 'g', -1, 64) + " lx" })
}

// recordCard is a card for a record that is its own draft.
func recordCard[T journal.Record](d *Desk, empty T, id journal.ID, name func(*T, journal.ID), fields func(*Card, *T)) (*Card, error) {
	stands, isNew := empty, id.IsZero()
	if isNew {
		name(&stands, journal.NewID())
	} else {
		r, err := journal.One[T](d.j, id)
		if err != nil {
			return nil, err
		}
		stands = r
	}
	ref := stands.Ref()
	c := &Card{d: d, ref: ref, isNew: isNew, faults: map[string]string{}, coined: map[string]journal.ID{}, newAt: map[journal.ID]string{}}
	c.title = words.ChangeTitle(words.KindName(ref.Kind))
	if isNew {
		c.title = words.AddTitle(words.KindName(ref.Kind))
	}
	draft := new(T)
	c.reset = func() { *draft = stands }
	c.load = func() bool {
		r, err := journal.One[T](d.j, ref.ID)
		if err == nil {
			stands = r
		}
		return err == nil
	}
	c.batch = func() journal.Batch { return journal.Batch{Put: []journal.Record{*draft}} }
	fields(c, draft)
	return c.begin(), nil
}
