package state

import (
	"strconv"
	"strings"

	"gloamline/geo"
	"gloamline/geo/draft"
	"gloamline/journal/units"
	"gloamline/ui/words"
)

// Fields are the lines of the panel beside the plan: those of the pool or feature picked out, else
// of the beat itself, in the order they are shown.
func (b *BeatDesk) Fields() []Field {
	d, ok := b.Drawn()
	if !ok {
		return nil
	}
	var out []Field
	if p, ok := d.Beat.Pool(b.sel); ok {
		out = b.poolFields(d.Beat, p)
	} else if f, ok := featureOf(d.Beat, b.sel); ok {
		out = b.featureFields(f)
	} else {
		out = b.beatFields(d.Beat)
	}
	for i := range out {
		if text, bad := b.typed[b.fieldKey(out[i].ID)]; bad {
			out[i].Value = text
			_, out[i].Error = b.read(out[i].ID, text)
		}
	}
	return out
}

func (b *BeatDesk) fieldKey(id string) string { return b.sel.String() + "." + id }

// Heading names what the panel shows.
func (b *BeatDesk) Heading() string {
	d, ok := b.Drawn()
	switch {
	case !ok:
		return ""
	case b.isPool(b.sel):
		p, _ := d.Beat.Pool(b.sel)
		return words.PoolHeading(p)
	}
	if f, ok := featureOf(d.Beat, b.sel); ok {
		return words.FeatureHeading(f)
	}
	return words.BeatHeading(b.Stands())
}

func (b *BeatDesk) beatFields(s geo.Beat) []Field {
	place := Field{ID: "place", Label: words.PlaceLabel(), Hint: words.PlaceHint()}
	if at := s.At; !at.IsZero() {
		place.Value = words.PlaceValue(at)
		place.Read = words.PlaceRead(at)
	} else if at := s.Place(); !at.IsZero() {
		place.Read = words.PlaceDrawn(at)
	}
	zone := Field{ID: "zone", Label: words.ZoneLabel(), Kind: Combo, Value: s.Zone, Choices: b.zoneChoices(), Hint: words.ZoneHint()}
	if s.Zone != "" && b.top.found == s.Zone {
		zone.Read = words.ZoneFound(len(zone.Choices) - 1)
	}
	out := []Field{
		{ID: "name", Label: words.BeatNameLabel(), Value: s.Name, Hint: words.BeatNameHint()},
		{ID: "river", Label: words.RiverLabel(), Kind: Combo, Value: s.River.Name, Choices: b.rivers()},
		place, zone,
	}
	if b.tool == DrawRiver {
		out = append([]Field{b.widthField()}, out...)
	}
	if _, _, ok := b.Tracing(); ok && b.tool == PlaceTracing {
		out = append([]Field{{ID: "trace", Label: words.TraceLabel(b.tracingStep()), Hint: words.TraceHint(b.tracingStep())}}, out...)
	}
	return out
}

func (b *BeatDesk) widthField() Field {
	return Field{ID: "width", Label: words.WidthLabel(), Value: strconv.FormatFloat(float64(b.width), 'f', -1, 64) + " m"}
}

func (b *BeatDesk) poolFields(s geo.Beat, p geo.Pool) []Field {
	order := Field{ID: "order", Label: words.OrderLabel(), Kind: Pick, Value: strconv.Itoa(p.Order)}
	for i := range s.Pools {
		n := strconv.Itoa(i + 1)
		order.Choices = append(order.Choices, Choice{n, words.OrderChoice(i+1, len(s.Pools))})
	}
	line := Field{ID: "skyline", Label: words.SkylineLabel(), Kind: Lines, Value: draft.PrintSkyline(p.Skyline), Hint: words.SkylineHint()}
	as := Field{ID: "skyline as", Label: words.SkylineAsLabel(), Kind: Pick, Choices: []Choice{{"", words.SkylineAsNone()}}}
	for _, q := range s.InOrder() {
		if q.ID != p.ID && len(q.Skyline) > 0 {
			as.Choices = append(as.Choices, Choice{q.ID.String(), words.PoolName(q.Name)})
		}
	}
	out := []Field{
		{ID: "name", Label: words.NameLabel(), Value: p.Name},
		order,
		{ID: "canopy", Label: words.CanopyLabel(), Kind: Pick, Value: string(p.Canopy), Choices: canopyChoices()},
		{ID: "bank", Label: words.FishedFromLabel(), Kind: Pick, Value: string(p.Bank), Choices: bankChoices()},
		line,
	}
	if len(as.Choices) > 1 {
		out = append(out, as)
	}
	return out
}

func (b *BeatDesk) featureFields(f geo.Feature) []Field {
	out := []Field{{ID: "name", Label: words.NameLabel(), Value: f.Name, Hint: words.FeatureNameHint(f.Role)}}
	switch f.Role {
	case geo.RoleBank:
		out = []Field{{ID: "bank", Label: words.BankLabel(), Kind: Pick, Value: string(f.Bank), Choices: bankChoices()}, out[0]}
	case geo.RoleTrees:
		out = append(out, Field{ID: "canopy", Label: words.CanopyLabel(), Kind: Pick, Value: string(f.Canopy), Choices: canopyChoices()})
	default:
		out = append(out, Field{ID: "bank", Label: words.BankLabel(), Kind: Pick, Value: string(f.Bank), Choices: bankChoices()})
	}
	if len(f.Shape.Points) > 0 {
		role := Field{ID: "role", Label: words.RoleLabel(), Kind: Pick, Value: string(f.Role)}
		for _, r := range []geo.Role{geo.RoleEntry, geo.RoleHazard, geo.RoleLie, geo.RoleMark} {
			role.Choices = append(role.Choices, Choice{string(r), words.RoleName(r)})
		}
		out = append(out, role)
	}
	return out
}

func canopyChoices() []Choice {
	out := []Choice{{"", words.NotKnown()}}
	for _, c := range []geo.Canopy{geo.Open, geo.Partly, geo.Closed} {
		out = append(out, Choice{string(c), words.CanopyName(c)})
	}
	return out
}

func bankChoices() []Choice {
	return []Choice{{"", words.NotKnown()}, {string(geo.TrueLeft), words.BankName(geo.TrueLeft)}, {string(geo.TrueRight), words.BankName(geo.TrueRight)}}
}

// Set fills in a field of the panel. What is typed stays in the field as it was typed until something
// else is done, so that no letter is put right under the hand; a text that cannot be read stays
// with its reason, and the drawing as it was.
func (b *BeatDesk) Set(id, text string) {
	if b.top == nil {
		return
	}
	b.d.act(func() {
		b.tell()
		free := false
		for _, f := range b.Fields() {
			if f.ID == id {
				text = pickValue(f.Choices, text)
				free = f.Kind == Text || f.Kind == Combo || f.Kind == Lines
			}
		}
		key := b.fieldKey(id)
		delete(b.typed, key)
		b.typing = true
		act, fault := b.read(id, text)
		failed := fault != "" || act() != nil
		b.typing = false
		if failed || free && id != "trace" {
			b.typed[key] = text
		}
	})
}

// read says what filling a field in would do, or why it cannot be read.
func (b *BeatDesk) read(id, text string) (act func() error, fault string) {
	edit := func(f func(draft.Draft) (draft.Draft, error)) func() error {
		sel := b.sel
		return func() error { return b.do(id+" "+sel.String(), f) }
	}
	told := func(err error) string {
		what, do := words.Explain(err)
		return words.Twice(what, do)
	}
	s := b.now().Beat
	switch id {
	case "place":
		if strings.TrimSpace(text) == "" {
			return nil, words.PlaceWanted()
		}
		at, err := readPlace(text)
		if err != nil {
			return nil, told(err)
		}
		if _, err := b.now().Place(at); err != nil {
			return nil, told(err)
		}
		return func() error { return b.putAt(at, "place") }, ""
	case "zone":
		if err := b.zoneFault(text); err != nil {
			return nil, told(err)
		}
		return func() error { return b.setZone(text) }, ""
	case "river":
		return func() error { return b.call("river", s.Name, text) }, ""
	case "width":
		w, err := units.ParseLength(text, units.Metre)
		if err != nil {
			return nil, told(err)
		}
		return func() error { b.width = w.M; return nil }, ""
	case "trace":
		return func() error { return b.TraceTo(text) }, ""
	case "skyline":
		if _, err := draft.ParseSkyline(text); err != nil {
			return nil, told(b.skyFault(err))
		}
		return func() error { return b.TypeSky(text) }, ""
	case "skyline as":
		return func() error { return b.skyAs(text) }, ""
	case "order":
		n, err := strconv.Atoi(text)
		if err != nil {
			return nil, words.PlaceInOrder(len(s.Pools))
		}
		return edit(func(d draft.Draft) (draft.Draft, error) { return d.Reorder(b.sel, n) }), ""
	case "canopy":
		return edit(func(d draft.Draft) (draft.Draft, error) { return d.Shade(b.sel, geo.Canopy(text)) }), ""
	case "bank":
		return edit(func(d draft.Draft) (draft.Draft, error) { return d.Side(b.sel, geo.Bank(text)) }), ""
	case "role":
		return edit(func(d draft.Draft) (draft.Draft, error) { return d.Turn(b.sel, geo.Role(text)) }), ""
	case "name":
		switch {
		case b.sel.IsZero():
			return func() error { return b.call("name", text, s.River.Name) }, ""
		case b.isPool(b.sel) && strings.TrimSpace(text) == "":
			return nil, words.PoolWantsName()
		}
		return edit(func(d draft.Draft) (draft.Draft, error) { return d.Rename(b.sel, text) }), ""
	}
	return func() error { return nil }, ""
}

// skyAs gives the pool picked out the skyline of another one.
func (b *BeatDesk) skyAs(text string) error {
	id, err := geo.ParseID(text)
	p, ok := b.now().Beat.Pool(id)
	if err != nil || !ok {
		return nil
	}
	return b.horizon("", p.Skyline)
}
