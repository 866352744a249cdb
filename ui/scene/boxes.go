package scene

import (
	"math"

	"gloamline/journal"
	"gloamline/journal/units"
	"gloamline/timeline"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// FlyGroup is one box, or the flies in none, or those put aside.
type FlyGroup struct {
	Box  journal.Box // zero for the last two
	Kind string      // "box", "loose" or "retired"
	Rows []FlyRow
}

// FlyRow is one fly as it is tied now, with what nights say of it.
type FlyRow struct {
	Fly     journal.Fly
	Dress   journal.Dress
	Record  timeline.FlyRecord
	Retired bool
}

// LengthKind marks the grip at the top of a fly by which it is drawn out; the ID is the
// fly's.
const LengthKind journal.Kind = "length"

// BoxView is what the room of flies shows.
type BoxView struct {
	Groups  []FlyGroup
	Rules   []journal.HouseRule
	Picked  journal.Ref
	Dragged journal.ID // zero: none
	Length  units.Length
	Prefs   words.Prefs
}

// Measures of the room in dp.
const (
	boxPad     = 14.0
	cellWidth  = 250.0
	cellLine   = 16.0
	cellText   = 44.0 // from the cell's left edge to its text
	groupHead  = 34.0
	boxPerInch = 26.0 // one scale for every fly, so that lengths can be compared
	ruleWidth  = 76.0
	ruleHeight = 38.0
)

var (
	boxTitleFont = draw.Font{Weight: draw.Bold, Size: 15}
	boxLineFont  = draw.Font{Size: 13}
	boxNameFont  = draw.Font{Weight: draw.Bold, Size: 13}
)

// BoxPerInch is how many dp of Boxes an inch of dressing takes.
func BoxPerInch() float64 { return boxPerInch }

// Boxes draws all flies, box by box, each upright at one scale, and below them the house
// rules, in a column of that width; its height is what it needs. The top of each fly is a
// grip of kind LengthKind.
func Boxes(width float64, look Look, v BoxView) Scene {
	b := &boxes{look: look, v: v, width: width, list: draw.NewList(draw.Size{W: width, H: 1e5}), y: boxPad}
	b.list.Group(words.BoxesTitle())
	flies := 0
	for _, g := range v.Groups {
		flies += len(g.Rows)
		b.group(g)
	}
	if flies == 0 && len(v.Groups) == 0 {
		b.paragraph(words.EmptyBoxes())
	}
	b.rules()
	b.list.EndGroup()
	out := draw.NewList(draw.Size{W: width, H: b.y + boxPad})
	out.Fill(draw.Rectangle(draw.Bounds(out.Size())), draw.NonZero, draw.Solid(look.Panel))
	draw.Place(out, b.list, 1, draw.Point{})
	return Scene{List: out, Hits: b.hits}
}

type boxes struct {
	look  Look
	v     BoxView
	width float64
	list  *draw.List
	hits  []Hit
	y     float64
}

func (b *boxes) paragraph(text string) {
	for _, line := range draw.Wrap(boxLineFont, text, b.width-2*boxPad) {
		b.y += cellLine + 2
		b.list.Text(draw.Text{S: line, At: draw.Pt(boxPad, b.y-4), Font: boxLineFont, Color: b.look.Soft})
	}
	b.y += 8
}

// heading is the line over a group; a box can be picked out by it.
func (b *boxes) heading(title, beside string, ref journal.Ref, tip string) {
	top := b.y
	b.y += groupHead
	t := draw.Text{S: draw.Fit(boxTitleFont, title, b.width-2*boxPad), At: draw.Pt(boxPad, b.y-12), Font: boxTitleFont, Color: b.look.Ink}
	b.list.Text(t)
	x := boxPad + draw.Measure(boxTitleFont, t.S).Width + 10
	b.list.Text(draw.Text{S: draw.Fit(textFont, beside, b.width-boxPad-x), At: draw.Pt(x, b.y-12), Font: textFont, Color: b.look.Soft})
	b.list.Stroke(draw.Line(draw.Pt(boxPad, b.y-4), draw.Pt(b.width-boxPad, b.y-4)), draw.Stroke{Width: 1}, b.look.Rule)
	box := draw.R(boxPad-6, top+8, b.width-2*boxPad+12, groupHead-9)
	if !ref.ID.IsZero() {
		b.hits = append(b.hits, Hit{Ref: ref, Box: box, Tip: tip})
		if ref == b.v.Picked {
			b.ring(box)
		}
	}
	b.y += 6
}

func (b *boxes) ring(r draw.Rect) {
	b.list.Stroke(draw.RoundRect(r.Inset(1), 5), draw.Stroke{Width: 1.8}, b.look.Accent)
}

func (b *boxes) group(g FlyGroup) {
	ref := journal.Ref{}
	if g.Kind == "box" {
		ref = g.Box.Ref()
	}
	b.heading(words.GroupTitle(g.Kind, g.Box.Name), words.GroupUse(g.Kind, g.Box.Use, len(g.Rows)), ref, words.GroupTitle(g.Kind, g.Box.Name))
	if len(g.Rows) == 0 {
		b.paragraph(words.EmptyBox())
		return
	}
	columns := max(1, int((b.width-2*boxPad)/cellWidth))
	wide := (b.width - 2*boxPad) / float64(columns)
	for i := 0; i < len(g.Rows); i += columns {
		row := g.Rows[i:min(i+columns, len(g.Rows))]
		height := 0.0
		cells := make([]cell, len(row))
		for k, r := range row {
			cells[k] = b.cell(r, wide)
			height = math.Max(height, cells[k].height)
		}
		for k, c := range cells {
			b.draw(c, draw.R(boxPad+float64(k)*wide, b.y, wide-8, height))
		}
		b.y += height + 8
	}
	b.y += 4
}

// cell is one fly with the lines that stand beside it.
type cell struct {
	row    FlyRow
	dress  journal.Dress // with the length it is being drawn out to
	name   []string
	lines  []string
	halves []flyHalf
	height float64
}

func (b *boxes) cell(r FlyRow, wide float64) cell {
	c := cell{row: r, dress: r.Dress}
	if b.v.Dragged == r.Fly.ID {
		c.dress.Length = journal.Of(b.v.Length)
	}
	room := wide - 8 - cellText - 6
	look := c.dress
	look.HotSpot = journal.Field[string]{}
	c.name = draw.Wrap(boxNameFont, words.Fly(look, b.v.Prefs), room)
	if r.Fly.Label != "" {
		c.lines = append(c.lines, draw.Wrap(textFont, "“"+r.Fly.Label+"”", room)...)
	}
	if s := words.FlyArms(c.dress); s != "" {
		c.lines = append(c.lines, draw.Wrap(textFont, s, room)...)
	}
	if r.Record.Nights == 0 {
		c.lines = append(c.lines, words.NeverFished())
	}
	for _, half := range []flyHalf{{words.BeforeGrey(), r.Record.Before}, {words.AfterGrey(), r.Record.Grey}} {
		if half.of != (timeline.FlyLight{}) {
			c.halves = append(c.halves, half)
		}
	}
	marked := 0
	for _, h := range c.halves {
		marked += len(h.marks(wide - 8 - cellText - 4 - flyHours - 8))
	}
	tall := boxPerInch
	if l, ok := c.dress.Length.Get(); ok {
		tall = inches(l) * boxPerInch
	}
	c.height = math.Max(tall+30, float64(len(c.name)+len(c.lines)+marked)*cellLine+20)
	return c
}

// flyHalf is what came of a fly in one half of the light.
type flyHalf struct {
	when string
	of   timeline.FlyLight
}

// flyMark is one sort of contact with how many came.
type flyMark struct {
	of journal.Contact
	n  string
	w  float64
}

// marks are the contacts of a half in lines that fit; the first stands behind the hours.
func (h flyHalf) marks(room float64) [][]flyMark {
	lines := [][]flyMark{nil}
	x := 0.0
	for _, m := range []struct {
		n float64
		t journal.Touch
	}{{h.of.Landed, journal.Landed}, {h.of.Lost, journal.Lost}, {h.of.Touches, journal.Pull}, {h.of.Shows, journal.Boil}} {
		if m.n < 0.05 {
			continue
		}
		k := flyMark{of: journal.Contact{Touch: m.t}, n: words.Expected(m.n)}
		k.w = contactSize(k.of).W + 9 + draw.Measure(textFont, k.n).Width
		if x+k.w > room && x > 0 {
			lines, x = append(lines, nil), 0
		}
		lines[len(lines)-1] = append(lines[len(lines)-1], k)
		x += k.w
	}
	return lines
}

// record draws hours and fish of a fly, by the marks that stand for them everywhere, and
// returns the foot of what it drew.
func (b *boxes) record(h flyHalf, x, y, room float64) float64 {
	soft := func(s string, at float64, a draw.Anchor) {
		b.list.Text(draw.Text{S: s, At: draw.Pt(at, y), Font: textFont, Color: b.look.Soft, Anchor: a})
	}
	soft(h.when, x, draw.Start)
	soft(words.Hours(h.of.Water), x+flyHours, draw.End)
	for i, line := range h.marks(room - flyHours - 8) {
		if i > 0 {
			y += cellLine
		}
		at := x + flyHours + 8
		for _, m := range line {
			size := contactSize(m.of).W
			drawContact(b.list, b.look, m.of, draw.Pt(at+size/2, y-4), 1)
			soft(m.n, at+size+3, draw.Start)
			at += m.w
		}
	}
	return y
}

// flyHours is where the hours of a fly end, from the text's left edge, in dp.
const flyHours = 98.0

func (b *boxes) draw(c cell, r draw.Rect) {
	ref := c.row.Fly.Ref()
	strength := 1.0
	ink := b.look.Ink
	if c.row.Retired {
		strength, ink = 0.5, b.look.Soft
	}
	foot := draw.Pt(r.Min.X+20, r.Max.Y-12)
	inch := foot.Y - boxPerInch
	b.list.Stroke(draw.Line(draw.Pt(r.Min.X+5, inch), draw.Pt(r.Min.X+36, inch)), draw.Stroke{Width: 1, Dash: []float64{1, 3}}, draw.Fade(b.look.Ink, 0.6))
	plate, top := drawFly(b.list, b.look, true, c.dress, foot, boxPerInch, strength)
	y := r.Min.Y + 8
	for _, s := range c.name {
		y += cellLine
		b.list.Text(draw.Text{S: s, At: draw.Pt(r.Min.X+cellText, y-3), Font: boxNameFont, Color: ink})
	}
	for _, s := range c.lines {
		y += cellLine
		b.list.Text(draw.Text{S: s, At: draw.Pt(r.Min.X+cellText, y-3), Font: textFont, Color: b.look.Soft})
	}
	for _, h := range c.halves {
		y = b.record(h, r.Min.X+cellText, y+cellLine, r.W()-cellText-4)
	}
	b.hits = append(b.hits, Hit{Ref: ref, Box: r, Tip: words.FlyCellTip(c.row.Fly, c.dress, c.row.Record, b.v.Prefs)})
	grip := draw.R(plate.Min.X-5, top-9, plate.W()+10, 15)
	if b.v.Picked == ref || b.v.Dragged == c.row.Fly.ID {
		b.ring(r)
		b.grip(draw.Pt(foot.X, top-3))
	}
	b.hits = append(b.hits, Hit{Ref: journal.Ref{Kind: LengthKind, ID: c.row.Fly.ID}, Box: grip})
}

// grip is where a fly is drawn out: a bar with a point up and one down.
func (b *boxes) grip(c draw.Point) {
	var p draw.Path
	p.Move(c.X-7, c.Y)
	p.Line(c.X+7, c.Y)
	p.Move(c.X+9, c.Y-1.5)
	p.Line(c.X+12, c.Y-5)
	p.Line(c.X+15, c.Y-1.5)
	p.Move(c.X+9, c.Y+1.5)
	p.Line(c.X+12, c.Y+5)
	p.Line(c.X+15, c.Y+1.5)
	b.list.Stroke(p, draw.Stroke{Width: 1.6, Cap: draw.RoundCap, Join: draw.RoundJoin}, b.look.Accent)
}

// rules lists the house rules, each with a small plan of its light and lengths.
func (b *boxes) rules() {
	b.heading(words.RulesTitle(), words.RulesKey(), journal.Ref{}, "")
	if len(b.v.Rules) == 0 {
		b.paragraph(words.NoRules())
		return
	}
	columns := max(1, int((b.width-2*boxPad)/420))
	wide := (b.width - 2*boxPad) / float64(columns)
	for i := 0; i < len(b.v.Rules); i += columns {
		row := b.v.Rules[i:min(i+columns, len(b.v.Rules))]
		height := ruleHeight + 16
		texts := make([][2][]string, len(row))
		for k, r := range row {
			room := wide - ruleWidth - 34
			second := words.RuleWhen(r) + "; " + words.RuleAsks(r, b.v.Prefs)
			if r.Practice {
				second += "; " + words.CommonPractice()
			}
			texts[k] = [2][]string{draw.Wrap(boxNameFont, r.Words, room), draw.Wrap(textFont, second, room)}
			height = math.Max(height, float64(len(texts[k][0])+len(texts[k][1]))*cellLine+18)
		}
		for k, r := range row {
			b.rule(r, texts[k], draw.R(boxPad+float64(k)*wide, b.y, wide-8, height))
		}
		b.y += height + 6
	}
}

func (b *boxes) rule(r journal.HouseRule, texts [2][]string, box draw.Rect) {
	b.plan(r, draw.R(box.Min.X+8, box.Min.Y+9, ruleWidth, ruleHeight))
	x, y := box.Min.X+ruleWidth+20, box.Min.Y+6
	for i, lines := range texts {
		font, c := boxNameFont, b.look.Ink
		if i == 1 {
			font, c = textFont, b.look.Soft
		}
		for _, s := range lines {
			y += cellLine
			b.list.Text(draw.Text{S: s, At: draw.Pt(x, y-3), Font: font, Color: c})
		}
	}
	b.hits = append(b.hits, Hit{Ref: r.Ref(), Box: box, Tip: words.RuleTip(r, b.v.Prefs)})
	if r.Ref() == b.v.Picked {
		b.ring(box)
	}
}

// plan draws a rule: light runs from day at the left to black at the right, the
// moment of grey trees an upright in it; lengths run up to three inches.
func (b *boxes) plan(r journal.HouseRule, p draw.Rect) {
	const lightest, darkest, most = 2.0, -3.0, 3.0 // log10 lux, inches
	x := func(decades float64) float64 {
		return p.Min.X + p.W()*math.Max(0, math.Min(1, (lightest-decades)/(lightest-darkest)))
	}
	y := func(in float64) float64 { return p.Max.Y - p.H()*math.Max(0, math.Min(1, in/most)) }
	grey := x(math.Log10(float64(timeline.DefaultThreshold().Lux)))
	from, to := p.Min.X, p.Max.X
	switch r.AtGrey {
	case "before":
		to = grey
	case "after":
		from = grey
	default:
		if l, ok := r.Light.Get(); ok {
			from = x(math.Log10(float64(l)))
		}
		if l, ok := r.Dark.Get(); ok {
			to = x(math.Log10(float64(l)))
		}
	}
	low, high := p.Max.Y, p.Min.Y
	if l, ok := r.Min.Get(); ok {
		low = y(inches(l))
	}
	if l, ok := r.Max.Get(); ok {
		high = y(inches(l))
	}
	b.list.Fill(draw.Rectangle(draw.R(from, high, to-from, low-high)), draw.NonZero, draw.Solid(draw.Fade(b.look.Ink, 0.22)))
	b.list.Stroke(draw.Rectangle(p), draw.Stroke{Width: 1}, b.look.Edge)
	b.list.Stroke(draw.Line(draw.Pt(grey, p.Min.Y), draw.Pt(grey, p.Max.Y)), thresholdStroke, draw.Fade(b.look.Ink, 0.7))
	if len(r.Silhouettes)+len(r.Tones) == 0 {
		return
	}
	d := journal.Dress{Length: journal.Of(units.LengthOf(1, units.Inch))}
	if len(r.Silhouettes) > 0 {
		d.Silhouette = journal.Of(r.Silhouettes[0])
	}
	if len(r.Tones) > 0 {
		d.Tone = journal.Of(r.Tones[0])
	}
	drawFly(b.list, b.look, true, d, draw.Pt((from+to)/2, p.Max.Y-7), 22, 1)
}
