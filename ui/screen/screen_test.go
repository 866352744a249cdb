package screen

import (
	"image/color"
	"math"
	"os"
	"path/filepath"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/ui/draw"
	"gloamline/ui/paper"
	"gloamline/ui/scene"
	"gloamline/ui/words"
)

func mouseAt(x, y float32) *desktop.MouseEvent {
	return &desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: fyne.NewPos(x, y)}, Button: desktop.MouseButtonPrimary}
}

// Ensure that at every size the parts lie beside each other, inside the window, and
// the strip and the sketch keep room to be read, with a card and without.
func TestLayout(t *testing.T) {
	s := newScreen(t, true, 1280, 800)
	open(t, s, "2026-07-04")
	for _, size := range []fyne.Size{{Width: 1024, Height: 700}, {Width: 1280, Height: 800}, {Width: 1440, Height: 900}, {Width: 1920, Height: 1080}} {
		for _, card := range []bool{false, true} {
			s.win.Resize(size)
			if card {
				c, err := s.desk.AddCard(journal.KindNote)
				require.NoError(t, err)
				s.desk.OpenCard(c)
			}
			l := s.night.Layout.(*night)
			parts := map[string]fyne.CanvasObject{"header": l.header, "tools": l.tools, "sketch": l.sketch, "log": l.log, "strip": l.strip, "card": l.card}
			for a, p := range parts {
				if !p.Visible() {
					continue
				}
				end := p.Position().AddXY(p.Size().Width, p.Size().Height)
				assert.LessOrEqual(t, end.X, s.night.Size().Width+7, "%s at %v, card %v", a, size, card)
				assert.LessOrEqual(t, end.Y, s.night.Size().Height+1, "%s at %v, card %v", a, size, card)
				for b, q := range parts {
					if a < b && q.Visible() && a != "tools" && b != "tools" {
						assert.False(t, overlap(p, q), "%s and %s at %v, card %v", a, b, size, card)
					}
				}
			}
			assert.Equal(t, card, l.card.Visible())
			assert.Equal(t, !card, l.log.Visible(), "%v", size)
			assert.GreaterOrEqual(t, s.strip.Size().Height, float32(minStrip-8), "%v", size)
			assert.GreaterOrEqual(t, s.sketch.Size().Height, float32(150), "%v", size)
			assert.GreaterOrEqual(t, s.sketch.Size().Width, float32(minSketch), "%v", size)
			s.desk.CloseCard()
		}
	}
}

func overlap(a, b fyne.CanvasObject) bool {
	const touch = 0.5
	ap, bp, as, bs := a.Position(), b.Position(), a.Size(), b.Size()
	return ap.X+as.Width > bp.X+touch && bp.X+bs.Width > ap.X+touch && ap.Y+as.Height > bp.Y+touch && bp.Y+bs.Height > ap.Y+touch
}

// Ensure that the header says the night in the words of ui/words, and follows.
func TestHeaderFollows(t *testing.T) {
	s := newScreen(t, true, 1280, 800)
	open(t, s, "2026-07-04")
	assert.Equal(t, words.NightTitle(s.desk.Night()), s.header.date.Text())
	before := s.header.lines[1].Text()
	s.focus(s.strip)
	write(s, "f")
	s.focus(row(t, s, "rod").in)
	write(s, "a")
	s.focus(row(t, s, "pool").in)
	write(s, "u")
	press(s, fyne.KeyReturn)
	assert.NotEqual(t, before, s.header.lines[1].Text(), "a fish more")
	assert.Equal(t, words.Header(s.desk.Night(), s.prefs())[1], s.header.lines[1].Text())
}

// Ensure that an empty journal opens, says what to do, and can be given its first
// night's card.
func TestEmptyJournal(t *testing.T) {
	s := newScreen(t, false, 1280, 800)
	assert.Nil(t, s.desk.Night())
	assert.Equal(t, words.NoNightTitle(), s.header.date.Text())
	sc, _ := s.sketch.Scene()
	assert.NotEmpty(t, sc.List.TextBoxes())
	s.runID("help.about")
	press(s, fyne.KeyEscape)
	for _, b := range []interface{ MouseMoved(*desktop.MouseEvent) }{s.sketch, s.strip, s.log} {
		b.MouseMoved(mouseAt(50, 50))
	}
	s.strip.MouseDown(mouseAt(50, 50))
	s.sketch.MouseDown(mouseAt(50, 50))
}

// Ensure that a row of the list opens its night, that the open one is marked, and that
// the keys of the list go through it.
func TestNightList(t *testing.T) {
	s := newScreen(t, true, 1280, 800)
	s.side.list.Select(3)
	assert.True(t, s.desk.NightRow(3).Open)
	open(t, s, "2026-07-04")
	s.focus(s.side.list)
	was := s.desk.Cursor()
	s.side.list.TypedKey(&fyne.KeyEvent{Name: fyne.KeyRight})
	assert.NotEqual(t, was, s.desk.Cursor(), "keys that mean nothing to the list are the window's")
	i := newNightItem(s)
	i.set(s.desk.RowOf(s.desk.Night().Log.Trip.ID))
	assert.NotEqual(t, color.Color(color.Transparent), i.bar.FillColor)
	assert.Equal(t, "Sat 4", i.date.Text)
}

// Ensure that clicks select, in all three boards the same thing, and that the log
// scrolls to it.
func TestClickSelectsEverywhere(t *testing.T) {
	s := newScreen(t, true, 1280, 800)
	open(t, s, "2026-07-04")
	for name, b := range map[string]interface {
		Scene() (scene.Scene, draw.Size)
		MouseDown(*desktop.MouseEvent)
		Offset() float64
	}{"sketch": s.sketch, "strip": s.strip, "log": s.log} {
		s.desk.Select(journal.Ref{})
		sc, _ := b.Scene()
		n := 0
		for _, h := range sc.Hits {
			if h.Ref.Kind != journal.KindContact {
				continue
			}
			p := h.Box.Center()
			if top, ok := sc.At(p); !ok || top.Ref != h.Ref {
				continue
			}
			if name == "log" { // it may stand scrolled: only what is in view can be clicked
				s.desk.Select(h.Ref)
				s.desk.Select(journal.Ref{})
				y := p.Y - b.Offset()
				require.True(t, y >= 0 && y <= float64(s.log.Size().Height), "what is selected comes into view and stays")
			}
			n++
			b.MouseDown(mouseAt(float32(p.X), float32(p.Y-b.Offset())))
			assert.Equal(t, h.Ref, s.desk.Selected(), name)
			lsc, size := s.log.Scene()
			box, ok := lsc.Box(h.Ref)
			require.True(t, ok)
			assert.GreaterOrEqual(t, box.Min.Y, s.log.Offset(), name)
			assert.LessOrEqual(t, box.Max.Y, s.log.Offset()+size.H, name)
			if name == "log" {
				break
			}
		}
		assert.Positive(t, n, name)
	}
}

// Ensure that a click on empty ground moves the cursor to the instant there, that its line
// and the clock below are dragged to scrub, and that other ground moves under the pointer.
func TestStripMovesCursor(t *testing.T) {
	s := newScreen(t, true, 1280, 800)
	open(t, s, "2026-07-04")
	f := func() scene.StripFrame {
		_, size := s.strip.Scene()
		return scene.Frame(s.desk.Night(), size, s.stripView())
	}
	at := func(x float64) time.Time { return f().At(x) }
	y := f().Plot.Min.Y + 2
	ground := func(from float64) float64 { // empty, and away from the cursor's line
		sc, _ := s.strip.Scene()
		for x := from; ; x++ {
			if _, hit := sc.At(draw.Pt(x, y)); !hit && math.Abs(x-f().X(s.desk.Cursor())) > 20 {
				return x
			}
		}
	}
	n := 0
	for x := f().Plot.Min.X + 30; x < f().Plot.Max.X-60; x += 97 {
		x = ground(x)
		was := s.desk.Cursor()
		s.strip.MouseDown(mouseAt(float32(x), float32(y)))
		assert.Equal(t, was, s.desk.Cursor(), "before it is known to be no drag")
		s.strip.MouseUp(mouseAt(float32(x), float32(y)))
		assert.InDelta(t, 0, at(x).Sub(s.desk.Cursor()).Seconds(), 31)
		n++
	}
	require.Greater(t, n, 3)

	for _, grab := range []draw.Point{{X: f().X(s.desk.Cursor()) + 2, Y: y}, {X: 300, Y: float64(s.strip.Size().Height) - 6}} {
		drag(s.strip, grab, grab.Add(draw.Pt(-50, 0)), false)
		assert.InDelta(t, 0, at(grab.X-50).Sub(s.desk.Cursor()).Seconds(), 31)
		assert.True(t, s.desk.Fitted())
	}

	x, was := ground(f().Plot.Min.X+200), s.desk.Cursor()
	there := at(x)
	drag(s.strip, draw.Pt(x, y), draw.Pt(x-40, y), false)
	assert.InDelta(t, 0, at(x-40).Sub(there).Seconds(), 2, "the ground does not follow the pointer")
	assert.Equal(t, was, s.desk.Cursor())
	s.strip.DoubleTapped(&fyne.PointEvent{Position: fyne.NewPos(float32(ground(x)), float32(y))})
	assert.True(t, s.desk.Fitted(), "a double click on empty ground shows the whole")
}

// Ensure that the wheel zooms the strip about the pointer and the sketch about the
// place under it.
func TestWheelZooms(t *testing.T) {
	s := newScreen(t, true, 1280, 800)
	open(t, s, "2026-07-04")
	_, size := s.strip.Scene()
	f := scene.Frame(s.desk.Night(), size, s.stripView())
	x := f.Plot.Min.X + f.Plot.W()*0.3
	at := f.At(x)
	s.strip.Scrolled(&fyne.ScrollEvent{PointEvent: fyne.PointEvent{Position: fyne.NewPos(float32(x), 60)}, Scrolled: fyne.NewDelta(0, 60)})
	g := scene.Frame(s.desk.Night(), size, s.stripView())
	assert.Less(t, g.At(g.Plot.Max.X).Sub(g.At(g.Plot.Min.X)), f.At(f.Plot.Max.X).Sub(f.At(f.Plot.Min.X)))
	assert.InDelta(t, 0, g.At(x).Sub(at).Seconds(), 2)

	_, size = s.sketch.Scene()
	p := draw.Point{X: size.W * 0.4, Y: size.H/2 + 2}
	before := scene.SketchPlace(s.desk.Night(), size, s.sketchView(), p)
	s.sketch.Scrolled(&fyne.ScrollEvent{PointEvent: fyne.PointEvent{Position: fyne.NewPos(float32(p.X), float32(p.Y))}, Scrolled: fyne.NewDelta(0, 120)})
	require.Greater(t, s.desk.Sketch().Zoom, 1.2)
	after := scene.SketchPlace(s.desk.Night(), size, s.sketchView(), p)
	assert.InDelta(t, float64(before.Lat), float64(after.Lat), 2e-5) // 2 m
	assert.InDelta(t, float64(before.Lon), float64(after.Lon), 3e-5)
}

// Ensure that another look reaches the theme, the panels and the boards.
func TestLooks(t *testing.T) {
	s := newScreen(t, true, 1280, 800)
	open(t, s, "2026-07-04")
	for _, l := range scene.Looks {
		s.desk.SetLook(l.Name)
		assert.Equal(t, l.Name, s.look().Name)
		assert.Equal(t, color.Color(l.Edge), s.edges[0].edge.Objects()[0].(*canvas.Rectangle).FillColor, l.Name)
		assert.Equal(t, color.Color(l.Ink), s.header.date.Color(), l.Name)
		assert.Equal(t, color.Color(l.Back), s.app.Settings().Theme().Color("background", 0), l.Name)
		img := s.win.Canvas().Capture()
		assert.Equal(t, l.Back.R, color.NRGBAModel.Convert(img.At(3, 300)).(color.NRGBA).R, "%s: the ground", l.Name)
	}
}

// Ensure that the night and the look of last time come back.
func TestRemembers(t *testing.T) {
	s := newScreen(t, true, 1280, 800)
	open(t, s, "2026-07-04")
	s.desk.SetLook("paper")
	mem := s.opt.Remember.(recall)
	assert.Equal(t, "paper", mem["look"])
	require.NotEmpty(t, mem["night"])

	again := newScreen(t, true, 1280, 800)
	again.opt.Remember = mem
	again.desk.CloseNight()
	again.restore()
	assert.Equal(t, "2026-07-04", again.desk.Night().Log.Trip.Evening.String())
}

// Ensure that a page is written whole in each format, never over a file that is there,
// and that a wrong ending is refused in words.
func TestWritePages(t *testing.T) {
	s := newScreen(t, true, 1280, 800)
	open(t, s, "2026-07-04")
	n := s.desk.Night()
	pages := scene.Page(n, scene.Paper, scene.PageView{Prefs: s.prefs()})
	dir := t.TempDir()
	for ext, magic := range map[string]string{"pdf": "%PDF-", "png": "\x89PNG", "svg": "<?xml"} {
		path := filepath.Join(dir, words.PageFile(n)+"."+ext)
		require.NoError(t, writePages(path, "title", pages))
		b, err := os.ReadFile(path)
		require.NoError(t, err)
		assert.Equal(t, magic, string(b[:len(magic)]), ext)
		err = writePages(path, "title", pages)
		assert.ErrorIs(t, err, os.ErrExist)
		assert.NotEmpty(t, words.SaveFault(err))
	}
	assert.ErrorIs(t, writePages(filepath.Join(dir, "page.doc"), "", pages), paper.ErrFormat)
	assert.ErrorIs(t, writePages(filepath.Join(dir, "none", "page.pdf"), "", pages), os.ErrNotExist)
}

// Ensure that no text of the window is drawn in a sign that the typeface lacks.
func TestWordsHaveGlyphs(t *testing.T) {
	s := newScreen(t, true, 1280, 800)
	for _, c := range s.desk.Commands() {
		for _, r := range c.Title() + c.Help + keyText(c.Key) {
			assert.True(t, draw.Has(r), "%s: %q", c.ID, r)
		}
	}
}

// BenchmarkCursorStep is what a press of an arrow costs, all three boards drawn.
func BenchmarkCursorStep(b *testing.B) {
	s := newScreen(b, true, 1440, 900)
	open(b, s, "2026-07-04")
	for b.Loop() {
		s.desk.StepCursor(1)
		s.sketch.Scene()
		s.strip.Scene()
		s.log.Scene()
		if s.desk.Cursor().After(s.desk.Night().To) {
			s.desk.SetCursor(s.desk.Night().From)
		}
	}
}

// Ensure that every part of the window stands on whole pixels at any size: a picture
// between two of them would lose a row.
func TestWholePixels(t *testing.T) {
	s := newScreen(t, true, 1280, 800)
	open(t, s, "2026-07-04")
	for w := float32(1000); w < 1500; w += 37 {
		s.win.Resize(fyne.NewSize(w, w*0.61))
		for name, b := range map[string]fyne.CanvasObject{"sketch": s.sketch, "strip": s.strip, "log": s.log} {
			at := s.app.Driver().AbsolutePositionForObject(b)
			for _, v := range []float32{at.X, at.Y, b.Size().Width, b.Size().Height} {
				require.Equal(t, float32(int(v)), v, "%s in a window %v wide", name, w)
			}
		}
	}
}
