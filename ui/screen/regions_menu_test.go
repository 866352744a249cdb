package screen

import (
	"bytes"
	"log/slog"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"
	"github.com/stretchr/testify/assert"
)

// bar stands for the toolkit's bar of menus, which a test's window has not got.
type bar struct {
	widget.BaseWidget
	Items []fyne.CanvasObject
}

type barTitle struct {
	widget.BaseWidget
	Menu  *fyne.Menu
	below *widget.Menu
}

func (b *barTitle) Child() *widget.Menu { return b.below }

// Ensure that the titles of the bar are told, the lines of a menu only while it is down,
// and that what is no bar is passed over.
func TestTellBar(t *testing.T) {
	s := newScreen(t, true, 1280, 800)
	var told bytes.Buffer
	s.opt.Log = slog.New(slog.NewTextHandler(&told, &slog.HandlerOptions{Level: slog.LevelDebug}))
	b := &bar{}
	for _, m := range s.menus.main.Items {
		b.Items = append(b.Items, &barTitle{Menu: m, below: widget.NewMenu(m)})
	}
	file := b.Items[0].(*barTitle).below
	for _, o := range b.Items {
		o.(*barTitle).below.Hide()
	}
	trees := []fyne.CanvasObject{s.win.Canvas().Content(), b}

	s.tellBar(trees)
	assert.Contains(t, told.String(), `name="menu File"`)
	assert.Contains(t, told.String(), `name="menu Help"`)
	assert.NotContains(t, told.String(), "line ")

	file.Show()
	s.tellBar(trees)
	assert.Contains(t, told.String(), `name="line Quit`)
	assert.NotContains(t, told.String(), `name="line Undo`)
}

// Ensure that what is drawn and what can be pressed is told with its place in the window.
func TestTellRegions(t *testing.T) {
	s := newScreen(t, true, 1280, 800)
	open(t, s, "2026-07-04")
	before := post
	post = func(f func()) { f() }
	t.Cleanup(func() { post = before })
	var told bytes.Buffer
	s.opt.Log = slog.New(slog.NewTextHandler(&told, &slog.HandlerOptions{Level: slog.LevelDebug}))
	s.TellRegions()
	for _, name := range []string{"command add.fish", "command edit.undo", "strip contact ", "sketch pool ", "plot 2026-07-04T"} {
		assert.Contains(t, told.String(), `name="`+name)
	}
	assert.NotContains(t, told.String(), `name="field`)
}
