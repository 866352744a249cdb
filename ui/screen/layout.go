package screen

import (
	"fmt"
	"math"

	"fyne.io/fyne/v2"

	own "gloamline/ui/widget"
)

// shares are how the window's room is shared out, as a person left it.
type shares struct {
	side   float32 // width of the list of nights, dp
	log    float32 // width of the log, dp; 0: as made
	upper  float32 // height of the sketch over that of sketch and strip; 0: as made
	noSide bool
	noLog  bool
	legend bool
}

// night lays out the open night: the header, below it the sketch over the strip, and at
// their right the log at full height. A card takes the log's place: while something is
// written down the place and the light stay in view and where they were.
// In a window too narrow for that the log stands beside the sketch alone.
type night struct {
	header, tools, sketch, log, strip, legend, card fyne.CanvasObject
	pen                                             fyne.CanvasObject // the line for scribbles
	across, down                                    *own.Divider      // between left and right, between sketch and strip
	legendHeight                                    func(width float32) float32
	penHeight                                       func(room float32) float32 // 0: there is none
	penWanted                                       func() bool                // it is in use
	gaps                                            fyne.CanvasObject          // what is missing, at the foot of the log
	gapHeight                                       func(width float32) float32
	cardOpen                                        func() bool
	sh                                              *shares
	rest                                            float32 // height of sketch and strip at the last layout
}

// window lays out everything: the column at the left, the room that is shown, the footer. A
// card in a narrow window takes the room of the nights.
type window struct {
	side, main, foot fyne.CanvasObject
	edge             *own.Divider
	cardOpen         func() bool
	sh               *shares
}

// narrow is the width of a window below which nights and card do not both fit, and
// tallLog that of a night's room from which the log has the full height.
const (
	narrow  = 1180
	tallLog = 1000
)

func (l *window) left(width float32) float32 {
	if l.sh.noSide || l.cardOpen() && width < narrow {
		return 0
	}
	return l.sh.side
}

func (l *window) MinSize([]fyne.CanvasObject) fyne.Size {
	n := l.main.MinSize()
	return fyne.NewSize(n.Width+2*gap, n.Height+l.foot.MinSize().Height)
}

func (l *window) Layout(_ []fyne.CanvasObject, size fyne.Size) {
	left := l.left(size.Width)
	show(l.side, left > 0)
	show(l.edge, left > 0)
	foot := l.foot.MinSize().Height
	place(l.foot, 0, size.Height-foot, size.Width, foot)
	place(l.side, 0, 0, left, size.Height-foot)
	place(l.edge, left-3, 0, 8, size.Height-foot)
	place(l.main, left+14, 8, size.Width-left-28, size.Height-foot-12)
}

const (
	gap       = 10
	minSketch = 300
	minLog    = 270
	maxLog    = 620
	minUpper  = 165
	minStrip  = 236
	cardWidth = 348
)

func (l *night) MinSize([]fyne.CanvasObject) fyne.Size {
	h := l.header.MinSize().Height + l.tools.MinSize().Height + 3*gap
	return fyne.NewSize(minSketch+minLog+gap, h+minUpper+minStrip)
}

// right is the width of the right column: the card, else the log.
func (l *night) right(w float32) float32 {
	want := l.sh.log
	switch {
	case l.cardOpen():
		return min(max(cardWidth, min(want, 460)), w/2)
	case l.sh.noLog:
		return 0
	case want > 0:
		return min(max(minLog, want), min(maxLog, w-minSketch-gap))
	case w >= tallLog:
		return cardWidth
	}
	return max(minLog, min(w*0.34, 470))
}

func (l *night) Layout(_ []fyne.CanvasObject, size fyne.Size) {
	w := size.Width
	open := l.cardOpen()
	right := l.right(w)
	tall := w >= tallLog || open
	show(l.card, open)
	show(l.log, !open && right > 0)
	// The key to the marks shares the log's column, so that the picture it explains stays
	// as it is; without that column it stands below, and a card is left alone.
	beside := l.sh.legend && tall && right > 0 && !open
	below := l.sh.legend && !beside && !open
	show(l.legend, beside || below)

	mainW := w
	if right > 0 {
		mainW = w - right - gap
	}
	hh := l.header.MinSize().Height
	if wrap, ok := l.header.(interface{ HeightFor(float32) float32 }); ok {
		hh = wrap.HeightFor(w)
	}
	place(l.header, 0, 0, w, hh)
	th := l.tools.MinSize().Height
	place(l.tools, -6, hh+2, w+12, th)

	top := hh + 2 + th + gap - 4
	if open {
		place(l.card, w-right, top, right, size.Height-top)
	}
	stripW := w
	if tall {
		stripW = mainW
	}
	foot := float32(0)
	if below {
		foot = min(l.legendHeight(stripW), size.Height*0.3)
		place(l.legend, 0, size.Height-foot, stripW, foot)
		foot += gap
	}
	// The line for scribbles is the foot of the log, else stands under the strip while in use.
	underLog := !open && right > 0 && tall
	pen := float32(0)
	if l.penHeight != nil && !open && (underLog || l.penWanted()) {
		pen = l.penHeight((size.Height - top) * 0.6)
	}
	show(l.pen, pen > 0)
	if pen > 0 && !underLog {
		place(l.pen, 0, size.Height-foot-pen, stripW, pen)
		foot += pen + gap
	}
	rest := size.Height - top - gap - foot
	l.rest = rest
	upper := l.upper(rest)
	place(l.sketch, 0, top, mainW, upper)
	place(l.strip, 0, top+upper+gap, stripW, rest-upper)
	logH := upper
	if tall {
		logH = size.Height - top
	}
	show(l.across, right > 0 && !open)
	place(l.across, mainW, top, gap, logH)
	if pen > 0 && underLog {
		place(l.pen, w-right, top+logH-pen, right, pen)
		logH -= pen - 1
	}
	gaps := float32(0)
	if l.gapHeight != nil && !open && right > 0 {
		gaps = l.gapHeight(right - 2)
	}
	show(l.gaps, gaps > 0)
	if gaps > 0 {
		place(l.gaps, w-right, top+logH-gaps-2, right, gaps+2)
		logH -= gaps + 1
	}
	if beside {
		h := min(l.legendHeight(right), logH*0.55)
		place(l.legend, w-right, top+logH-h, right, h)
		logH -= h + gap
	}
	if !open && right > 0 {
		place(l.log, w-right, top, right, logH)
	}
	place(l.down, 0, top+upper, mainW, gap)
}

// upper is the height of the sketch of what sketch and strip have together. In a low
// window the strip keeps its room: it has text, the sketch only shrinks.
func (l *night) upper(rest float32) float32 {
	want := rest*0.37 - max(0, 600-rest)*0.25
	if l.sh.upper > 0 {
		want = rest * l.sh.upper
	}
	return max(minUpper, min(want, rest-minStrip))
}

// moveAcross gives the right column so much less room, moveDown the sketch so much more.
func (l *night) moveAcross(w, by float32) { l.sh.log = min(max(minLog, l.right(w)-by), maxLog) }

func (l *night) moveDown(by float32) {
	if l.rest > 0 {
		l.sh.upper = min(max(minUpper, l.upper(l.rest)+by), l.rest-minStrip) / l.rest
	}
}

// String is how the shares are remembered; readShares is the way back.
func (sh *shares) String() string {
	b := func(v bool) int {
		if v {
			return 1
		}
		return 0
	}
	return fmt.Sprintf("%.0f %.0f %.3f %d %d %d", sh.side, sh.log, sh.upper, b(sh.noSide), b(sh.noLog), b(sh.legend))
}

func (sh *shares) read(text string) {
	var side, log, upper float32
	var noSide, noLog, legend int
	n, err := fmt.Sscanf(text, "%f %f %f %d %d %d", &side, &log, &upper, &noSide, &noLog, &legend)
	if err != nil || n != 6 || !(side >= minSide && side <= maxSide && log >= 0 && log <= maxLog && upper >= 0 && upper <= 1) {
		return
	}
	sh.side, sh.log, sh.upper = side, log, upper
	sh.noSide, sh.noLog, sh.legend = noSide == 1, noLog == 1, legend == 1
}

const (
	minSide = 150
	maxSide = 420
)

// share changes how the room is shared out, lays everything out anew and remembers it.
func (s *Screen) share(change func(*shares)) {
	change(s.shares)
	s.all.Refresh()
	s.night.Refresh()
	s.remember("shares", s.shares.String())
}

func (s *Screen) logShown() bool  { return !s.shares.noLog && s.desk.Card() == nil }
func (s *Screen) sideShown() bool { return s.side.all.Visible() }

// toggleFull fills the screen or goes back.
func (s *Screen) toggleFull() { s.win.SetFullScreen(!s.win.FullScreen()) }

// dividers are made once the parts they lie between are there.
func (s *Screen) dividers(l *night) {
	end := func() { s.share(func(*shares) {}) }
	l.across = own.NewDivider(true, s.look, func(by float32) {
		l.moveAcross(s.night.Size().Width, by)
		s.night.Refresh()
	}, end, func() { s.share(func(sh *shares) { sh.log = 0 }) })
	l.down = own.NewDivider(false, s.look, func(by float32) {
		l.moveDown(by)
		s.night.Refresh()
	}, end, func() { s.share(func(sh *shares) { sh.upper = 0 }) })
}

// edge is the divider at the right of the list of nights.
func (s *Screen) edge() *own.Divider {
	return own.NewDivider(true, s.look, func(by float32) {
		s.shares.side = min(max(minSide, s.shares.side+by), maxSide)
		s.all.Refresh()
	}, func() { s.share(func(*shares) {}) }, func() { s.share(func(sh *shares) { sh.side = sideWidth }) })
}

// place puts something where it belongs, with its edges on whole dp: a picture that
// stood between two pixels would lose or double a row of them.
func place(o fyne.CanvasObject, x, y, w, h float32) {
	x0, y0 := whole(x), whole(y)
	o.Move(fyne.NewPos(x0, y0))
	o.Resize(fyne.NewSize(max(0, whole(x+w)-x0), max(0, whole(y+h)-y0)))
}

func whole(v float32) float32 { return float32(math.Round(float64(v))) }

func show(o fyne.CanvasObject, on bool) {
	if on == o.Visible() {
		return
	}
	if on {
		o.Show()
	} else {
		o.Hide()
	}
}
