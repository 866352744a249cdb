package scene

import (
	"fmt"
	"math"
	"strings"

	"gloamline/journal"
	"gloamline/journal/units"
	"gloamline/timeline"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// ClientWhole is the cursor of a night shown at once.
const ClientWhole = -1

// Fonts and measures of what is shown to somebody else, in dp: to be read at arm's
// length, over a shoulder.
var (
	clientHead = draw.Font{Weight: draw.Bold, Size: 24}
	clientText = draw.Font{Weight: draw.Regular, Size: 16}
)

const (
	clientGap   = 18.0
	clientLine  = 24.0
	clientLight = 80.0
	clientPlayH = 370.0 // sketch and light on a page
)

// Pages draws the night as shared on A4, as many sheets as its fish and notes take.
// It is the preview and what leaves: nothing is drawn that is not in c.
func (c ClientNight) Pages(look Look, p words.Prefs) []*draw.List { return handoutPages(c, look, p) }

// handoutPages puts the title, the photo with its fly, the picture and the lines on paper.
func handoutPages(c Handout, look Look, p words.Prefs) []*draw.List {
	const m = pageMargin
	w := PageSize.W - 2*m
	sheet := func() *draw.List {
		l := draw.NewList(PageSize)
		l.Fill(draw.Rectangle(draw.Bounds(PageSize)), draw.NonZero, draw.Solid(look.Back))
		return l
	}
	l := sheet()
	y := paragraph(l, clientHead, look.Ink, c.Title(), draw.Pt(m, m+22), w, 32)
	if c.Where() != "" {
		y = paragraph(l, clientText, look.Soft, c.Where(), draw.Pt(m, y), w, clientLine)
	}
	y = clientPhoto(l, c, look, draw.R(m, y, w, 260)) + clientGap
	play := c.Frame(draw.Size{W: w, H: clientPlayH}, look, ClientWhole, p)
	draw.Place(l, play, 1, draw.Pt(m, y))
	y += clientPlayH + clientGap + clientLine
	pages := []*draw.List{l}
	lines := c.Lines(p)
	for _, n := range c.Remarks() {
		lines = append(lines, words.ClientFish(n.Clock, n.Text))
	}
	for _, line := range lines {
		in := 0.0
		if strings.HasPrefix(line, "  ") { // below the line before
			in = 22
		}
		for _, r := range draw.Wrap(clientText, line, w-in) {
			if y > PageSize.H-m {
				l, y = sheet(), m+22
				pages = append(pages, l)
			}
			l.Text(draw.Text{S: r, At: draw.Pt(m+in, y), Font: clientText, Color: look.Ink})
			y += clientLine
		}
	}
	return pages
}

// Title is the one sentence over it.
func (c ClientNight) Title() string { return words.ClientSentence(c.Date, c.Water, c.Rods, c.Totals) }

// Where is the beat's position, if it is shown.
func (c ClientNight) Where() string { return c.Place }

// Lines are the fish in words.
func (c ClientNight) Lines(p words.Prefs) []string {
	var out []string
	for _, f := range c.Fish {
		out = append(out, ClientFishLine(c, f, p))
	}
	return out
}

// Remarks are what was written down.
func (c ClientNight) Remarks() []ClientNote { return c.Notes }

// Seen are the fish.
func (c ClientNight) Seen() []ClientFish { return c.Fish }

// Moment is the minute of a fish.
func (c ClientNight) Moment(n int) int { return c.Fish[n-1].Minute }

// Photos are pictures of some of them.
func (c ClientNight) Photos() []ClientPhoto { return c.Pictures }

// End is the last minute.
func (c ClientNight) End() int { return c.Minutes }

// Pace is the rate itself: the cursor is a minute.
func (c ClientNight) Pace(rate int) float64 { return float64(rate) }

// Moments are minutes, ClientStep apart or, on a long night, a multiple of it.
func (c ClientNight) Moments(most int) []int {
	step := ClientStep
	for c.Minutes/step >= most {
		step += ClientStep
	}
	var out []int
	for m := 0; m < c.Minutes; m += step {
		out = append(out, m)
	}
	return append(out, c.Minutes)
}

// ClientFishLine is a fish in words.
func ClientFishLine(c ClientNight, f ClientFish, p words.Prefs) string {
	pool, rod, fly := words.FishAtNoPool(), "", ""
	if f.Pool >= 0 {
		pool = c.Pools[f.Pool].Name
	}
	if f.Rod >= 0 && len(c.Rods) > 1 {
		rod = c.Rods[f.Rod]
	}
	if f.Fly != nil {
		fly = f.Fly.Words
	}
	return fmt.Sprintf("%d  ", f.N) + words.ClientFish(words.ClientClock(f.Clock, f.About),
		words.TouchName(f.Touch), words.SpeciesName(f.Species), f.Size, pool, words.RungName(f.Rung, p), fly, rod)
}

// clientPhoto draws the photo with the fly beside it and returns where it ends; without
// a photo it takes no room.
func clientPhoto(s *draw.List, c Handout, look Look, room draw.Rect) float64 {
	all := c.Photos()
	if len(all) == 0 {
		return room.Min.Y
	}
	photo := all[0]
	img := picture(photo.JPEG, look)
	if img == nil {
		return room.Min.Y
	}
	const flyRoom = 210.0
	b := img.Bounds()
	k := min((room.W()-flyRoom)/float64(b.Dx()), room.H()/float64(b.Dy()))
	box := draw.R(room.Min.X, room.Min.Y, float64(b.Dx())*k, float64(b.Dy())*k)
	s.Image(img, box)
	f, ok := fishNumbered(c, photo.Fish)
	if !ok {
		return box.Max.Y
	}
	x, wide := box.Max.X+20, room.Max.X-box.Max.X-20
	y := paragraph(s, clientText, look.Ink, f.Said(), draw.Pt(x, box.Min.Y+16), wide, clientLine)
	if f.Fly != nil {
		plate := flyPlate(s, look, *f.Fly, 96, draw.Pt(x, y-clientLine+14)) // 96 dp an inch: as it is, on A4
		y = paragraph(s, clientText, look.Ink, words.TrueSize(f.Fly.Words), draw.Pt(x, plate.Max.Y+24), wide, clientLine)
	}
	return math.Max(box.Max.Y, y-clientLine)
}

// contact is the fish as marks are drawn from it.
func (f ClientFish) contact() journal.Contact {
	k := journal.Contact{Touch: f.Touch}
	if f.Grams > 0 {
		k.Weight = journal.Of(units.Weight{G: units.Grams(f.Grams)})
	}
	if f.Kept {
		k.Fate = journal.Of(journal.Kept)
	}
	return k
}

// At counts what had happened by a minute; ClientWhole is all of it.
func (c ClientNight) At(minute int) timeline.Totals {
	if minute == ClientWhole {
		return c.Totals
	}
	var t timeline.Totals
	for _, f := range c.Fish {
		if f.Minute > minute {
			continue
		}
		count(&t, f)
	}
	return t
}

// count adds a fish to counts.
func count(t *timeline.Totals, f ClientFish) {
	switch f.Touch {
	case journal.Landed:
		t.Landed++
		if f.Kept {
			t.Kept++
		}
	case journal.Lost:
		t.Lost++
	case journal.Pluck, journal.Pull:
		t.Touches++
	default:
		t.Shows++
	}
}

// Says says where the night stands at a minute.
func (c ClientNight) Says(minute int, p words.Prefs) string {
	i := min(max(minute/ClientStep, 0), len(c.Clocks)-1)
	return words.ClientPlayed(c.Clocks[i], words.RungName(c.rung(minute), p), c.At(minute))
}
