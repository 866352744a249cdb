package scene

import (
	"time"

	"gloamline/timeline"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// Returns draws a year's catch returns at a width, as tall as they are: per river a table
// of months, the days, what is missing of which fish, and where returns are due. own are the user's own dated
// reminders, in words.
func Returns(r timeline.Returns, own []string, width float64, look Look, p words.Prefs) Scene {
	const pad, lead = 14.0, 17.0
	text, head, title := draw.Font{Size: 13}, draw.Font{Size: 12, Weight: draw.Medium}, draw.Font{Size: 15, Weight: draw.Bold}
	l := draw.NewList(draw.Size{W: width, H: 1e5})
	y, w := 26.0, width-2*pad
	say := func(f draw.Font, c draw.Color, s string) {
		if s != "" {
			y = paragraph(l, f, c, s, draw.Pt(pad, y), w, lead)
		}
	}
	if len(r.Rivers) == 0 {
		say(text, look.Ink, words.NoReturn(r.Year))
		y += 8
	}
	for _, river := range r.Rivers {
		say(title, look.Ink, words.ReturnTitle(r.Year, river))
		y += 4
		y = returnTable(l, river, pad, y, w, look, p, text, head)
		for i, m := range river.Months {
			if m.Days > 0 {
				say(text, look.Soft, words.ReturnDays(time.Month(i+1).String(), m))
			}
		}
		for _, s := range words.ReturnBlanks(river) {
			say(text, look.Soft, s)
		}
		y += 12
	}
	if len(r.Doubtful) > 0 {
		say(title, look.Ink, words.ReturnMissing(len(r.Doubtful)))
		y += 2
		for _, d := range r.Doubtful {
			say(text, look.Ink, words.DoubtfulLine(d, p))
		}
		y += 4
	}
	say(text, look.Soft, words.ConditionLine(r.Condition))
	y += 12
	say(title, look.Ink, words.ReturnsDue())
	y += 2
	for _, s := range own {
		say(text, look.Ink, s)
	}
	if len(own) == 0 {
		say(text, look.Soft, words.NoOwnReminder())
	}
	y += 4
	for _, m := range words.ReturnReminders() {
		say(text, look.Soft, m.Line())
	}
	y += 4
	say(text, look.Ink, words.ReturnCaution())
	out := draw.NewList(draw.Size{W: width, H: y + 4})
	out.Fill(draw.Rectangle(draw.R(0, 0, width, y+4)), draw.NonZero, draw.Solid(look.Panel))
	draw.Place(out, l, 1, draw.Pt(0, 0))
	return Scene{List: out}
}

// returnTable draws the months of a river; each column is as wide as what stands in it.
func returnTable(l *draw.List, river timeline.RiverReturn, x, y, w float64, look Look, p words.Prefs, text, head draw.Font) float64 {
	rows := [][]string{words.ReturnHeads()}
	for i, m := range river.Months {
		for _, line := range m.Lines {
			rows = append(rows, words.ReturnCells(time.Month(i+1), line, p))
		}
	}
	total := river.Total()
	for _, line := range total.Lines {
		rows = append(rows, words.ReturnTotalCells(line, p))
	}
	if len(rows) == 1 {
		return y
	}
	// Columns of words are as wide as their widest cell, up to a third; longer ones wrap.
	const air, lead = 16.0, 16.0
	wide := make([]float64, len(rows[0]))
	sum := 0.0
	for c := range wide {
		for r, row := range rows {
			f := text
			if r == 0 {
				f = head
			}
			wide[c] = max(wide[c], draw.Measure(f, row[c]).Width+air)
		}
		wide[c] = min(wide[c], w/4)
		sum += wide[c]
	}
	if sum > w {
		for c := range wide {
			wide[c] *= w / sum
		}
	}
	for r, row := range rows {
		f, ink := text, look.Ink
		switch {
		case r == 0:
			f, ink = head, look.Soft
		case r == len(rows)-len(total.Lines):
			l.Stroke(draw.Line(draw.Pt(x, y-12), draw.Pt(x+min(sum, w), y-12)), draw.Stroke{Width: 1}, look.Edge)
		}
		bottom, at := y+lead, x
		for c, cell := range row {
			bottom = max(bottom, paragraph(l, f, ink, cell, draw.Pt(at, y), wide[c]-6, lead))
			at += wide[c]
		}
		y = bottom + 2
	}
	return y + 6
}
