package scene

import (
	"gloamline/journal"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// Kinds of what can be pointed at in the lists of files and proposals, beside the records
// proposed themselves. The identity is that of the record, or of the file.
const (
	AcceptKind journal.Kind = "accept"   // accept a proposal, or leave it
	ChangeKind journal.Kind = "change"   // change it
	RejectKind journal.Kind = "reject"   // never propose it again
	KeepKind   journal.Kind = "keep"     // what is written stands
	TakeKind   journal.Kind = "take"     // the proposal takes its place
	BothKind   journal.Kind = "both"     // both stand
	SourceKind journal.Kind = "file"     // a file read in
	ClockKind  journal.Kind = "clock"    // put the clock of its device right
	OffKind    journal.Kind = "take off" // take a file off the list
)

// IntakeDo is what becomes of a proposal as things stand.
type IntakeDo uint8

// What can become of it.
const (
	IntakeLeft IntakeDo = iota
	IntakeAccepted
	IntakeRejected
	IntakeWaits // accepted, but what it contradicts is not settled
	IntakePast  // decided before
)

// IntakeRow is one proposal.
type IntakeRow struct {
	Ref       journal.Ref
	Times     string // 22:34–23:15
	What      string // run, Alder Pool, second run there
	Sure      string // 0.93; empty where that is no question
	Doubt     string
	Share     float64 // of surety, 0 to 1
	Do        IntakeDo
	Thumb     []byte   // of a photo: a small JPEG
	Notes     []string // edited; accepted before; how the river stood
	Conflicts []IntakeSides
	Ways      []IntakeWay // to settle all of them
}

// IntakeSides are a proposal and what it contradicts, side by side.
type IntakeSides struct {
	WrittenHead, Written   string
	ProposedHead, Proposed string
}

// IntakeWay is a way to settle a conflict.
type IntakeWay struct {
	Kind   journal.Kind // KeepKind, TakeKind or BothKind
	Label  string
	Chosen bool
}

// IntakeListView is the list of proposals.
type IntakeListView struct {
	Rows   []IntakeRow
	Picked journal.Ref
	Empty  []string // what to say where there are none, by paragraphs
}

var (
	intakeFont     = draw.Font{Size: 13}
	intakeBoldFont = draw.Font{Weight: draw.Bold, Size: 13}
)

// Measures of the list in dp.
const (
	intakePad   = 12.0
	intakeText  = 38.0 // where the words begin, after the box
	intakeLine  = 18.0
	intakeBox   = 15.0
	buttonHigh  = 23.0
	buttonInset = 9.0
)

// intakeList draws the list from the top down.
type intakeList struct {
	look Look
	list *draw.List
	rows []Hit // under the buttons
	hits []Hit
	w, y float64
}

// IntakeList draws the proposals: a box to accept each, its times, what it is, how sure it
// is, and under it, side by side, what it contradicts.
func IntakeList(size draw.Size, look Look, v IntakeListView) Scene {
	measure := &intakeList{look: look, list: draw.NewList(size), w: size.W}
	measure.all(v)
	g := &intakeList{look: look, list: draw.NewList(draw.Size{W: size.W, H: max(size.H, measure.y+16)}), w: size.W}
	g.list.Fill(draw.Rectangle(draw.Bounds(g.list.Size())), draw.NonZero, draw.Solid(look.Panel))
	g.list.Group(words.IntakeListTitle())
	g.all(v)
	g.list.EndGroup()
	return Scene{List: g.list, Hits: append(g.rows, g.hits...)}
}

func (g *intakeList) all(v IntakeListView) {
	g.y = 8
	if len(v.Rows) == 0 {
		for _, p := range v.Empty {
			g.y += 10
			g.say(intakeFont, g.look.Soft, p, intakePad, g.w-2*intakePad)
		}
		return
	}
	g.signs()
	past := false
	for i, r := range v.Rows {
		if r.Do == IntakePast && !past {
			past = true
			g.y += 12
			g.say(intakeBoldFont, g.look.Soft, words.IntakePastTitle(), intakePad, g.w-2*intakePad)
		}
		if i > 0 {
			g.list.Stroke(draw.Line(draw.Pt(intakePad, g.y), draw.Pt(g.w-intakePad, g.y)), draw.Stroke{Width: 1}, g.look.Rule)
		}
		g.row(r, r.Ref == v.Picked && !v.Picked.ID.IsZero())
	}
}

// say writes a paragraph and goes below it.
func (g *intakeList) say(f draw.Font, c draw.Color, text string, x, width float64) {
	for _, line := range draw.Wrap(f, text, width) {
		g.list.Text(draw.Text{S: line, At: draw.Pt(x, g.y+13), Font: f, Color: c})
		g.y += intakeLine
	}
}

// signs says how proposals are drawn on sketch and strip.
func (g *intakeList) signs() {
	x, y := intakePad, g.y+9
	for _, s := range []struct {
		g    Ghost
		says string
	}{{NoGhost, words.GhostWritten()}, {Accepted, words.GhostAccepted()}, {Proposed, words.GhostProposed()}} {
		w := 26.0
		if s.g == NoGhost {
			g.list.Stroke(bracketPath(x, x+w, y), draw.Stroke{Width: 1.6}, g.look.Ink)
		} else {
			drawGhostBracket(g.list, s.g, x, x+w, y, g.look.Ink)
		}
		g.list.Text(draw.Text{S: s.says, At: draw.Pt(x+w+6, y+4), Font: textFont, Color: g.look.Soft})
		x += w + 6 + draw.Measure(textFont, s.says).Width + 18
	}
	g.y += 26
}

// row draws one proposal.
func (g *intakeList) row(r IntakeRow, picked bool) {
	top := g.y
	right := g.w - intakePad
	g.y += 7
	if r.Do != IntakePast {
		box := draw.R(intakePad, g.y+1, intakeBox, intakeBox)
		g.box(box, r.Do)
		g.hits = append(g.hits, Hit{Ref: journal.Ref{Kind: AcceptKind, ID: r.Ref.ID}, Box: box.Inset(-4), Tip: words.AcceptTip(r.Do == IntakeAccepted || r.Do == IntakeWaits) + " " + r.Times + " " + r.What})
	}
	ink, soft := g.look.Ink, g.look.Soft
	if r.Do == IntakeRejected || r.Do == IntakePast {
		ink = g.look.Soft
	}
	sure := 0.0
	if r.Sure != "" {
		sure = g.sure(r, right)
	}
	if r.Times != "" {
		g.list.Text(draw.Text{S: r.Times, At: draw.Pt(intakeText, g.y+13), Font: intakeBoldFont, Color: ink})
		x := intakeText + draw.Measure(intakeBoldFont, r.Times).Width + 10
		lines := draw.Wrap(intakeFont, r.What, right-sure-x)
		g.say(intakeFont, ink, lines[0], x, right-sure-x)
		for _, rest := range lines[1:] {
			g.say(intakeFont, ink, rest, x, right-x)
		}
	} else {
		g.say(intakeFont, ink, r.What, intakeText, right-sure-intakeText)
	}
	if r.Doubt != "" {
		g.say(textFont, soft, r.Doubt, intakeText, right-intakeText)
	}
	for _, n := range r.Notes {
		g.say(textFont, soft, n, intakeText, right-intakeText)
	}
	g.thumb(r.Thumb)
	for _, c := range r.Conflicts {
		g.sides(c)
	}
	if len(r.Ways) > 0 {
		var row []intakeButton
		for _, way := range r.Ways {
			row = append(row, intakeButton{way.Kind, way.Label, way.Chosen})
		}
		g.buttons(r, row)
	}
	if picked && r.Do != IntakePast {
		g.acts(r)
	}
	g.y += 7
	body := draw.R(4, top+1, g.w-8, g.y-top-2)
	if picked {
		g.list.Fill(draw.Rectangle(draw.R(0, top+3, 3, g.y-top-6)), draw.NonZero, draw.Solid(g.look.Accent))
	}
	g.rows = append(g.rows, Hit{Ref: r.Ref, Box: body, Tip: r.Times + " " + r.What})
}

// thumb shows what a photo shows: whether it is of a fish, or of a watch's face.
func (g *intakeList) thumb(data []byte) {
	const most = 96.0
	img := thumbnail(data, g.look)
	if img == nil {
		return
	}
	b := img.Bounds()
	k := min((g.w-intakePad-intakeText)/float64(b.Dx()), most/float64(b.Dy()))
	g.list.Image(img, draw.R(intakeText, g.y+4, k*float64(b.Dx()), k*float64(b.Dy())))
	g.y += k*float64(b.Dy()) + 8
}

// sure says how sure a run is, by a bar and a figure, and how much room that takes.
func (g *intakeList) sure(r IntakeRow, right float64) float64 {
	const bar = 34.0
	w := draw.Measure(textFont, "0.00").Width
	x := right - w - 6 - bar
	g.list.Text(draw.Text{S: r.Sure, At: draw.Pt(right, g.y+13), Font: textFont, Color: g.look.Soft, Anchor: draw.End})
	frame := draw.R(x, g.y+5, bar, 7)
	g.list.Fill(draw.Rectangle(draw.R(x, g.y+5, bar*max(0, min(1, r.Share)), 7)), draw.NonZero, draw.Solid(draw.Fade(g.look.Ink, 0.55)))
	g.list.Stroke(draw.Rectangle(frame), draw.Stroke{Width: 1}, g.look.Soft)
	return bar + w + 16
}

// box is the box before a proposal.
func (g *intakeList) box(b draw.Rect, do IntakeDo) {
	frame := draw.RoundRect(b.Inset(0.5), 2)
	switch do {
	case IntakeAccepted, IntakeWaits:
		g.list.Fill(frame, draw.NonZero, draw.Solid(g.look.Accent))
		c := g.look.Panel
		if do == IntakeWaits {
			g.list.Text(draw.Text{S: "?", At: b.Center().Add(draw.Pt(0, 4.5)), Anchor: draw.Middle, Font: boldFont, Color: c})
			return
		}
		g.list.Stroke(draw.Polyline([]draw.Point{{X: b.Min.X + 3.5, Y: b.Min.Y + 8}, {X: b.Min.X + 6.5, Y: b.Min.Y + 11}, {X: b.Min.X + 11.5, Y: b.Min.Y + 4.5}}), draw.Stroke{Width: 2}, c)
	case IntakeRejected:
		g.list.Stroke(frame, draw.Stroke{Width: 1.2}, g.look.Soft)
		g.list.Stroke(draw.Line(b.Min.Add(draw.Pt(4, 4)), b.Max.Sub(draw.Pt(4, 4))), draw.Stroke{Width: 1.6}, g.look.Soft)
		g.list.Stroke(draw.Line(draw.Pt(b.Max.X-4, b.Min.Y+4), draw.Pt(b.Min.X+4, b.Max.Y-4)), draw.Stroke{Width: 1.6}, g.look.Soft)
	default:
		g.list.Stroke(frame, draw.Stroke{Width: 1.2}, g.look.Soft)
	}
}

// sides draws a conflict: what is written at the left, what is proposed at the right.
func (g *intakeList) sides(c IntakeSides) {
	const gap = 10.0
	width := g.w - intakePad - intakeText
	w := (width - gap) / 2
	g.y += 5
	top, foot := g.y, g.y
	for i, s := range [][2]string{{c.WrittenHead, c.Written}, {c.ProposedHead, c.Proposed}} {
		x := intakeText + float64(i)*(w+gap)
		g.y = top + 5
		g.say(boldFont, g.look.Soft, s[0], x+9, w-18)
		g.say(intakeFont, g.look.Ink, s[1], x+9, w-18)
		foot = max(foot, g.y+5)
	}
	for i := range 2 {
		st := draw.Stroke{Width: 1.2}
		if i == 1 {
			st = ghostEdge
		}
		g.list.Stroke(draw.RoundRect(draw.R(intakeText+float64(i)*(w+gap), top, w, foot-top), 4), st, g.look.Soft)
	}
	g.y = foot + 6
}

// acts are the buttons of the row picked out.
func (g *intakeList) acts(r IntakeRow) {
	g.y += 4
	yes := r.Do == IntakeAccepted || r.Do == IntakeWaits
	row := []intakeButton{{AcceptKind, words.AcceptLabel(), yes}}
	if Changeable(r.Ref.Kind) {
		row = append(row, intakeButton{ChangeKind, words.EditLabel(), false})
	}
	g.buttons(r, append(row, intakeButton{RejectKind, words.RejectLabel(), r.Do == IntakeRejected}))
}

// Changeable reports whether a proposal of a kind has a card to change it on.
func Changeable(k journal.Kind) bool {
	return k == journal.KindRun || k == journal.KindContact || k == journal.KindPhoto
}

type intakeButton struct {
	kind  journal.Kind
	label string
	on    bool
}

// buttons draws buttons in rows.
func (g *intakeList) buttons(r IntakeRow, row []intakeButton) {
	x := intakeText
	for _, b := range row {
		w := draw.Measure(textFont, b.label).Width + 2*buttonInset
		if x > intakeText && x+w > g.w-intakePad {
			x, g.y = intakeText, g.y+buttonHigh+4
		}
		box := draw.R(x, g.y, w, buttonHigh)
		c, shape := g.look.Ink, draw.RoundRect(box.Inset(0.5), 4)
		if b.on {
			g.list.Fill(shape, draw.NonZero, draw.Solid(g.look.Accent))
			c = g.look.Panel
		} else {
			g.list.Stroke(shape, draw.Stroke{Width: 1}, g.look.Soft)
		}
		g.list.Text(draw.Text{S: b.label, At: draw.Pt(x+buttonInset, g.y+16), Font: textFont, Color: c})
		g.hits = append(g.hits, Hit{Ref: journal.Ref{Kind: b.kind, ID: r.Ref.ID}, Box: box, Tip: b.label + ": " + r.Times + " " + r.What})
		x += w + 7
	}
	g.y += buttonHigh + 4
}
