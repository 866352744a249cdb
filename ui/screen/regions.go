package screen

import (
	"fyne.io/fyne/v2"

	"gloamline/ui/draw"
	"gloamline/ui/scene"
	own "gloamline/ui/widget"
)

// TellRegions writes into the log, one line each, what the pointer can find in the window
// and where: buttons by command, fields of the open card, the bar of menus and the lines
// of an open one, and what is drawn on the boards. Coordinates are dp from the window's
// corner. It is for whoever drives the window from outside and may be called from any
// goroutine.
func (s *Screen) TellRegions() {
	post(func() {
		for _, b := range s.tools.buttons {
			s.tellRegion("command "+b.c.ID, b.b)
		}
		if s.side.add != nil {
			s.tellRegion("command night.new", s.side.add)
		}
		for to, b := range s.rooms.ways {
			s.tellRegion("command view.room-"+string(to), b)
		}
		if s.start.all.Visible() {
			s.tellRegion("start draw", s.start.draw)
			s.tellRegion("start beat", s.start.beat)
			s.tellRegion("start night", s.start.night)
		}
		s.tellCardRegions()
		s.tellMenuRegions()
		s.tellSheetRegions()
		if r := s.rooms.here(); r != nil {
			r.tell()
			s.opt.Log.Debug("regions told")
			return
		}
		for _, b := range []struct {
			name string
			b    *own.Board
		}{{"sketch", s.sketch}, {"strip", s.strip}, {"log", s.log}} {
			s.tellRegion(b.name, b.b)
			s.tellHits(b.name, b.b)
		}
		if n := s.desk.Night(); n != nil { // so that a minute of the strip can be pointed at
			f := scene.Frame(n, size(s.strip), s.stripView())
			from, to := s.desk.StripWindow()
			s.logRegion("plot "+from.UTC().Format("2006-01-02T15:04:05Z")+" "+to.UTC().Format("2006-01-02T15:04:05Z"), s.strip, draw.R(f.X(from), f.Plot.Min.Y, f.X(to)-f.X(from), f.Full.Max.Y-f.Plot.Min.Y))
		}
		s.opt.Log.Debug("regions told")
	})
}

// tellHits tells what can be pointed at on a board, as far as it is in view.
func (s *Screen) tellHits(name string, b *own.Board) {
	sc, _ := b.Scene()
	view := draw.R(0, b.Offset(), float64(b.Size().Width), float64(b.Size().Height))
	for _, h := range sc.Hits {
		if view.Contains(h.Box.Center()) {
			s.logRegion(name+" "+string(h.Ref.Kind)+" "+h.Tip, b, h.Box.Move(draw.Pt(0, -b.Offset())))
		}
	}
}

// tellRegion tells where an object is, unless it is hidden.
func (s *Screen) tellRegion(name string, o fyne.CanvasObject) {
	if o.Visible() {
		s.logRegion(name, o, draw.R(0, 0, float64(o.Size().Width), float64(o.Size().Height)))
	}
}

func (s *Screen) logRegion(name string, in fyne.CanvasObject, r draw.Rect) {
	at := s.app.Driver().AbsolutePositionForObject(in)
	s.opt.Log.Debug("region", "name", name, "x", float64(at.X)+r.Min.X, "y", float64(at.Y)+r.Min.Y, "w", r.W(), "h", r.H())
}
