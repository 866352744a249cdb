package scene

import (
	"gloamline/timeline"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// PageSize is A4 in dp of 1/96 inch, so that 12 dp print as 9 points; PagePoint
// is how many PostScript points one such dp is.
var PageSize = draw.Size{W: 793.7, H: 1122.5}

// PagePoint is the size of a page's dp in PostScript points (1/72 inch).
const PagePoint = 0.75

// PageView is how a page speaks.
type PageView struct {
	Prefs words.Prefs
}

// Page draws one night to keep: the sketch, the strip with its rig lanes, the
// log with the light at each fish, totals, legend and cautions on one A4 page.
// A night that does not fit goes on overleaf; nothing is left out.
func Page(n *timeline.Night, look Look, v PageView) []*draw.List {
	const m = pageMargin
	w := PageSize.W - 2*m
	newPage := func() *draw.List {
		l := draw.NewList(PageSize)
		l.Fill(draw.Rectangle(draw.Bounds(PageSize)), draw.NonZero, draw.Solid(look.Back))
		return l
	}
	l := newPage()
	y := m + 16
	l.Group(words.PageTitle(n))
	l.Text(draw.Text{S: draw.Fit(draw.Font{Weight: draw.Bold, Size: 21}, words.PageTitle(n), w), At: draw.Pt(m, y), Font: draw.Font{Weight: draw.Bold, Size: 21}, Color: look.Ink})
	y += 22
	for _, s := range words.Header(n, v.Prefs) {
		y = paragraph(l, draw.Font{Size: 12.5}, look.Soft, s, draw.Pt(m, y), w, 17)
	}
	y += 2
	lg := pageLegend(n, w, look)
	foot := PageSize.H - m - lg.Size().H - 36
	const gutter = 26.0
	colW := (w - gutter) / 2
	rows := logRows(n, colW, LogView{Prefs: v.Prefs, Page: true})
	sketchH, stripH, lane := pageShares(rows, foot-y, stripFixed(n), len(n.Rods))
	sk := Sketch(n, draw.Size{W: w, H: sketchH}, look, SketchView{Prefs: v.Prefs, Paper: true})
	draw.Place(l, sk.List, 1, draw.Pt(m, y))
	frame(l, look, draw.R(m, y, w, sketchH))
	y += sketchH + pageGap
	st := Strip(n, draw.Size{W: w, H: stripH}, look, StripView{Prefs: v.Prefs, Paper: true, lane: lane})
	draw.Place(l, st.List, 1, draw.Pt(m, y))
	frame(l, look, draw.R(m, y, w, stripH))
	y += stripH + pageGap
	pages := []*draw.List{l}
	// the log in two columns, over as many pages as it takes
	cols := [2][]row{}
	cols[0], cols[1], rows = fill(rows, foot-y)
	cur, top := l, y
	for {
		for i, c := range cols {
			yy := top
			for _, r := range c {
				r.draw(cur, look, n, draw.Pt(m+float64(i)*(colW+gutter), yy), colW, LogView{Prefs: v.Prefs, Page: true})
				yy += r.height()
			}
		}
		pageFoot(cur, look, lg, m, w)
		if len(rows) == 0 {
			break
		}
		cur, top = newPage(), m+34
		cur.Text(draw.Text{S: words.PageContinued(n), At: draw.Pt(m, m+14), Font: draw.Font{Weight: draw.Bold, Size: 15}, Color: look.Ink})
		pages = append(pages, cur)
		cols[0], cols[1], rows = fill(rows, foot-top)
	}
	l.EndGroup()
	return pages
}

const (
	pageGap    = 8.0
	pageMargin = 40.0
)

// pageShares gives sketch and strip as much of the height as the log leaves; when
// the log is too long for one page, what is least readable, and the log goes on
// overleaf. fixed is the height of the strip without its light.
func pageShares(rows []row, height, fixed float64, rods int) (sketchH, stripH, lane float64) {
	for k := 1.0; ; k -= 0.05 {
		more := 20 * k // of each lane
		lane = leastLane + more
		sketchH, stripH = 116+114*k, fixed+more*float64(rods)+104+92*k
		if _, _, rest := fill(rows, height-sketchH-stripH-2*pageGap); len(rest) == 0 || k <= 0 {
			return sketchH, stripH, lane
		}
	}
}

// stripFixed is the height that a night's strip on a page needs beside the light.
func stripFixed(n *timeline.Night) float64 {
	const tall = 2000.0
	g := newStrip(n, draw.Size{W: PageSize.W - 2*pageMargin, H: tall}, Paper, StripView{Paper: true})
	return tall - g.plot.H()
}

// fill takes rows into two columns of that height, balanced when they all fit,
// and returns the rest. A heading is never left alone at a foot.
func fill(rows []row, height float64) (a, b, rest []row) {
	if len(rows) == 0 {
		return nil, nil, nil
	}
	total := 0.0
	for _, r := range rows {
		total += r.height()
	}
	target := height
	if total <= 2*height {
		target = min(height, total/2+rows[0].m.head)
	}
	a, rest = take(rows, target)
	b, rest = take(rest, height)
	return a, b, rest
}

func take(rows []row, height float64) (taken, rest []row) {
	h, n := 0.0, 0
	for n < len(rows) && h+rows[n].height() <= height {
		h += rows[n].height()
		n++
	}
	if n < len(rows) {
		for n > 1 && rows[n-1].heading {
			n--
		}
		if n == 0 {
			n = 1
		}
	}
	return rows[:n], rows[n:]
}

func frame(s draw.Surface, look Look, r draw.Rect) {
	s.Stroke(draw.RoundRect(r, 5), draw.Stroke{Width: 0.8}, look.Edge)
}

func pageFoot(s draw.Surface, look Look, lg *draw.List, m, w float64) {
	y := PageSize.H - m - 26
	draw.Place(s, lg, 1, draw.Pt(m, y-lg.Size().H))
	paragraph(s, textFont, look.Faint, words.PageCaution(), draw.Pt(m, y+12), w, 15)
}
