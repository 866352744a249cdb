package scene

import (
	"gloamline/geo"
	"gloamline/journal"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// IntakeFile is a file as it is listed.
type IntakeFile struct {
	ID     geo.ID // of the row alone
	Name   string
	Kind   string // gpx, photo, gauge; empty: none that is read
	Says   string // what the reader made of it
	Fault  []string
	Notes  []string // warnings and why it gives less than it might
	More   string   // how many more notes there are
	Clock  string   // how the clock of its device is put right; empty: it has none
	Hint   string   // what its offset may be
	Picked bool
}

// IntakeFiles lists the files at hand with what was made of each.
func IntakeFiles(size draw.Size, look Look, files []IntakeFile, empty string) Scene {
	measure := &intakeList{look: look, list: draw.NewList(size), w: size.W}
	measure.files(files, empty)
	g := &intakeList{look: look, list: draw.NewList(draw.Size{W: size.W, H: max(size.H, measure.y+12)}), w: size.W}
	g.list.Fill(draw.Rectangle(draw.Bounds(g.list.Size())), draw.NonZero, draw.Solid(look.Back))
	g.list.Group(words.IntakeFilesTitle())
	g.files(files, empty)
	g.list.EndGroup()
	return Scene{List: g.list, Hits: g.hits}
}

func (g *intakeList) files(files []IntakeFile, empty string) {
	g.y = 6
	if len(files) == 0 {
		g.say(textFont, g.look.Soft, empty, intakePad, g.w-2*intakePad)
	}
	for i, f := range files {
		if i > 0 {
			g.list.Stroke(draw.Line(draw.Pt(intakePad, g.y), draw.Pt(g.w-intakePad, g.y)), draw.Stroke{Width: 1}, g.look.Rule)
		}
		g.file(f)
	}
}

func (g *intakeList) file(f IntakeFile) {
	const x = 34.0
	top, room := g.y, g.w-x-intakePad
	g.y += 6
	g.fileSign(f.Kind, draw.Pt(18, g.y+9))
	var own []Hit
	name := room
	if f.Picked {
		box := draw.R(g.w-intakePad-16, g.y, 18, 18)
		g.list.Stroke(draw.Line(box.Min.Add(draw.Pt(5, 5)), box.Max.Sub(draw.Pt(5, 5))), draw.Stroke{Width: 1.6}, g.look.Soft)
		g.list.Stroke(draw.Line(draw.Pt(box.Max.X-5, box.Min.Y+5), draw.Pt(box.Min.X+5, box.Max.Y-5)), draw.Stroke{Width: 1.6}, g.look.Soft)
		own = append(own, Hit{Ref: journal.Ref{Kind: OffKind, ID: f.ID}, Box: box, Tip: words.TakeOffTip(f.Name)})
		name -= 20
	}
	g.list.Text(draw.Text{S: draw.Fit(intakeBoldFont, f.Name, name), At: draw.Pt(x, g.y+13), Font: intakeBoldFont, Color: g.look.Ink})
	g.y += intakeLine
	if f.Says != "" {
		g.say(textFont, g.look.Soft, f.Says, x, room)
	}
	for i, s := range f.Fault {
		c := g.look.Accent
		if i > 0 {
			c = g.look.Soft
		}
		g.say(textFont, c, s, x, room)
	}
	for _, n := range f.Notes {
		g.list.Text(draw.Text{S: "–", At: draw.Pt(x, g.y+13), Font: textFont, Color: g.look.Soft})
		g.say(textFont, g.look.Soft, n, x+11, room-11)
	}
	if f.More != "" {
		g.say(textFont, g.look.Soft, f.More, x+11, room-11)
	}
	if f.Hint != "" {
		g.say(textFont, g.look.Ink, f.Hint, x, room)
	}
	if f.Clock != "" {
		g.y += 3
		w := min(room, draw.Measure(textFont, f.Clock).Width+2*buttonInset)
		box := draw.R(x, g.y, w, buttonHigh)
		g.list.Stroke(draw.RoundRect(box.Inset(0.5), 4), draw.Stroke{Width: 1}, g.look.Soft)
		g.list.Text(draw.Text{S: draw.Fit(textFont, f.Clock, w-2*buttonInset), At: draw.Pt(x+buttonInset, g.y+16), Font: textFont, Color: g.look.Ink})
		own = append(own, Hit{Ref: journal.Ref{Kind: ClockKind, ID: f.ID}, Box: box, Tip: words.ClockTip()})
		g.y += buttonHigh
	}
	g.y += 7
	if f.Picked {
		g.list.Fill(draw.Rectangle(draw.R(0, top+3, 3, g.y-top-6)), draw.NonZero, draw.Solid(g.look.Accent))
	}
	g.hits = append(g.hits, Hit{Ref: journal.Ref{Kind: SourceKind, ID: f.ID}, Box: draw.R(2, top+1, g.w-4, g.y-top-2), Tip: f.Name})
	g.hits = append(g.hits, own...)
}

// fileSign is the sign of a kind of file: a way with its ends, a picture, a curve over its
// foot, a cross for what cannot be read.
func (g *intakeList) fileSign(kind string, at draw.Point) {
	ink, st := g.look.Ink, draw.Stroke{Width: 1.5, Join: draw.RoundJoin}
	p := func(x, y float64) draw.Point { return at.Add(draw.Pt(x, y)) }
	switch kind {
	case "gpx":
		g.list.Stroke(draw.Polyline([]draw.Point{p(-6, 5), p(-2, -2), p(2, 2), p(6, -5)}), st, ink)
		g.list.Fill(draw.Circle(p(-6, 5), 2), draw.NonZero, draw.Solid(ink))
		g.list.Fill(draw.Circle(p(6, -5), 2), draw.NonZero, draw.Solid(ink))
	case "photo":
		drawPhotoSign(g.list, g.look, at, 1)
	case "gauge":
		g.list.Stroke(draw.Polyline([]draw.Point{p(-7, 3), p(-3, -5), p(1, -1), p(7, 2)}), st, ink)
		g.list.Stroke(draw.Line(p(-7, 6), p(7, 6)), draw.Stroke{Width: 1}, g.look.Soft)
	default:
		g.list.Stroke(draw.Circle(at, 6), draw.Stroke{Width: 1.5}, g.look.Accent)
		g.list.Stroke(draw.Line(p(-3, -3), p(3, 3)), st, g.look.Accent)
		g.list.Stroke(draw.Line(p(3, -3), p(-3, 3)), st, g.look.Accent)
	}
}
