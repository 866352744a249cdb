package scene

import (
	"math"

	"gloamline/journal"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// CardInches is the width of a bank card: 85.60 mm, ISO/IEC 7810 ID-1.
const CardInches = 85.60 / 25.4

// cardShape is its height over its width: 53.98 mm.
const cardShape = 53.98 / 85.60

// enlargedInch is how many dp an inch of fly takes, by the height of the screen, where the
// screen was not measured.
const enlargedInch = 120.0

// guestPerInch is the scale a fly is drawn at: that of the screen, where it is known.
func guestPerInch(v ClientView, m guestSizes) float64 {
	if v.PerInch > 0 {
		return v.PerInch
	}
	return enlargedInch * m.u
}

// guestFlyHigh is the height that a fly takes with its words.
func guestFlyHigh(f ClientFly, v ClientView, m guestSizes) float64 {
	return flyPlateInches(f)*guestPerInch(v, m) + m.small.Size
}

// guestFly draws a fly upright on its plate beside a rule of one inch, with what it is and
// at which scale it is drawn.
func guestFly(l *draw.List, look Look, f ClientFly, v ClientView, m guestSizes, room draw.Rect) {
	per := guestPerInch(v, m)
	if high := flyPlateInches(f) * per; high > room.H() { // no room: smaller, and said so
		per, v.PerInch = per*room.H()/high, 0
	}
	plate := flyPlate(l, look, f, per, room.Min)
	tx := plate.Max.X + m.margin*0.4
	ty := plate.Center().Y - m.over.Size*0.4
	wide := room.Max.X - tx
	ty = paragraph(l, m.over, look.Ink, f.Words, draw.Pt(tx, ty), wide, m.over.Size*1.3)
	paragraph(l, m.small, look.Soft, words.GuestScale(v.PerInch > 0), draw.Pt(tx, ty+2), wide, m.small.Size*1.35)
}

// flyPlateInches is how high a fly's plate is: the fly or the rule beside it, and some air.
func flyPlateInches(f ClientFly) float64 { return math.Max(1, f.LengthM/0.0254) + 0.15 }

// flyPlate draws a fly upright on its plate, beside a rule of one inch of per dp, the upper
// left corner of the plate at p. One whose length is not known is a dashed one of an inch.
func flyPlate(l *draw.List, look Look, f ClientFly, per float64, p draw.Point) draw.Rect {
	long := f.LengthM / 0.0254 * per
	known := f.LengthM > 0
	if !known {
		long = per
	}
	high := math.Max(long, per)
	plate := draw.R(p.X, p.Y, math.Max(64, per*0.62), high+per*0.15)
	l.Fill(draw.RoundRect(plate, 7), draw.NonZero, draw.Solid(look.Plate))
	x, foot := plate.Min.X+plate.W()*0.42, plate.Min.Y+per*0.06+(high+long)/2
	drawLargeFly(l, look, f, known, draw.Pt(x, foot), long, per)
	rx, top := plate.Max.X-9, plate.Min.Y+per*0.06+(high-per)/2
	dark := look.Fly[0]
	l.Stroke(draw.Line(draw.Pt(rx, top), draw.Pt(rx, top+per)), draw.Stroke{Width: 1.3}, dark)
	for q := range 5 {
		y := top + per*float64(q)/4
		long := 4.0
		if q%4 == 0 {
			long = 8
		}
		l.Stroke(draw.Line(draw.Pt(rx-long, y), draw.Pt(rx, y)), draw.Stroke{Width: 1.3}, dark)
	}
	return plate
}

// drawLargeFly is a fly long enough for its silhouette to be in proportion: its bulk by the
// codes, a tenth to a quarter of an inch, a hook bend below its foot.
func drawLargeFly(l *draw.List, look Look, f ClientFly, known bool, foot draw.Point, long, per float64) {
	c := look.Fly[1]
	switch f.Tone {
	case journal.DarkTone:
		c = look.Fly[0]
	case journal.LightTone:
		c = look.Fly[2]
	}
	wide := 0.15
	switch f.Silhouette {
	case journal.Slim:
		wide = 0.09
	case journal.Full:
		wide = 0.24
	}
	top := foot.Y - long
	body := flyPath(foot.X, top, foot.Y, wide*per)
	if known {
		l.Fill(body, draw.NonZero, draw.Solid(c))
	} else {
		l.Stroke(body, draw.Stroke{Width: 1.6, Dash: []float64{4, 3}}, c)
	}
	b := per * 0.09
	var hook draw.Path
	hook.Move(foot.X, foot.Y-b*0.7)
	hook.Cubic(foot.X, foot.Y+b*0.9, foot.X+b*1.5, foot.Y+b*0.9, foot.X+b*1.5, foot.Y-b*0.4)
	l.Stroke(hook, draw.Stroke{Width: math.Max(1.4, per*0.02), Cap: draw.RoundCap}, c)
	if f.Hot {
		l.Fill(draw.Circle(draw.Pt(foot.X, top+math.Max(4, long*0.12)), math.Max(3, per*0.035)), draw.NonZero, draw.Solid(look.Hot))
	}
}

// GuestCard is where a screen is measured: an outline to be made as wide as a bank card
// held against it. wide is its width in dp.
func GuestCard(size draw.Size, look Look, wide float64) *draw.List {
	m := guestMeasures(size)
	l := draw.NewList(size)
	l.Group(words.CardTitle())
	l.Fill(draw.Rectangle(draw.Bounds(size)), draw.NonZero, draw.Solid(look.Panel))
	y := paragraph(l, m.said, look.Ink, words.CardTitle(), draw.Pt(m.margin, m.margin+m.said.Size), size.W-2*m.margin, m.said.Size*1.2)
	paragraph(l, m.over, look.Soft, words.CardHelp(), draw.Pt(m.margin, y), size.W-2*m.margin, m.over.Size*1.4)
	box := draw.R((size.W-wide)/2, size.H*0.62-wide*cardShape/2, wide, wide*cardShape)
	l.Fill(draw.RoundRect(box, wide*0.037), draw.NonZero, draw.Solid(draw.Mix(look.Panel, look.Ink, 0.08)))
	l.Stroke(draw.RoundRect(box, wide*0.037), draw.Stroke{Width: 1.5}, look.Accent)
	l.Text(draw.Text{S: words.CardWidth(), At: box.Center(), Anchor: draw.Middle, Align: draw.Centre, Font: m.over, Color: look.Ink})
	l.EndGroup()
	return l
}
