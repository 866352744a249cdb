package scene

import (
	"fmt"
	"math"

	"gloamline/ui/draw"
)

// pickedRing is around a fish that is picked out, and around its number where it has one.
func pickedRing(l *draw.List, look Look, f ClientFish, at draw.Point, number bool) {
	box := draw.R(at.X-13.5, at.Y-13.5, 27, 27)
	if number {
		box.Max.X = at.X + contactSize(f.contact()).W/2 + 3.5 + draw.Measure(boldFont, fmt.Sprint(f.N)).Width + 6
	}
	l.Stroke(draw.RoundRect(box, 13.5), draw.Stroke{Width: 2.2}, look.Accent)
}

// mark draws a fish, ringed where it has just come up and has no ring as the one picked out.
func (g *clientDraw) mark(f ClientFish, at draw.Point) {
	if since := g.minute - f.Minute; f.N != g.v.Fish && g.minute != ClientWhole && since >= 0 && since < clientFresh {
		fresh := 1 - float64(since)/clientFresh
		g.l.Stroke(draw.Circle(at, 12+8*(1-fresh)), draw.Stroke{Width: 2}, draw.Fade(g.look.Accent, fresh))
	}
	drawContact(g.l, g.look, f.contact(), at, clientStrength(f, g.minute))
	g.hits = append(g.hits, Hit{Ref: guestRef(GuestFishKind, f.N), Box: draw.R(at.X-14, at.Y-12, 28, 24)})
}

// number stands at the right of a fish's mark. Weight tells one that is yet to come: a paler
// number could not be read.
func (g *clientDraw) number(f ClientFish, at draw.Point, on draw.Color) {
	font := boldFont
	if clientStrength(f, g.minute) < 1 {
		font = textFont
	}
	g.l.Text(draw.Text{S: fmt.Sprint(f.N), At: draw.Pt(at.X+contactSize(f.contact()).W/2+3.5, at.Y), Align: draw.Centre, Font: font, Color: g.look.Ink, Halo: draw.Halo{Width: 2, Color: on}})
}

// marks puts each fish into its pool, at its spot where one is shown.
func (g *clientDraw) marks(room draw.Rect, pools []clientPool, taken *labels) {
	s, c, look, tone := g.l, g.c, g.look, g.tone
	k, seen, all := clientScale(clientHigh(c), room), map[int]int{}, map[int]int{}
	for _, f := range c.Fish {
		if f.Spot == nil {
			all[f.Pool]++
		}
	}
	for _, f := range c.Fish {
		if f.Pool < 0 || pools[f.Pool].path.Empty() {
			continue
		}
		in := pools[f.Pool].fish
		seats := max(1, int(in.W()/clientCell)) * max(1, int(in.H()/16))
		if !c.True && all[f.Pool] > seats && seen[f.Pool] >= seats-1 { // the list names them all
			if seen[f.Pool]++; seen[f.Pool] == all[f.Pool] {
				at := clientSeat(in, false, seats-1, all[f.Pool])
				s.Text(draw.Text{S: fmt.Sprintf("+%d", all[f.Pool]-seats+1), At: at, Align: draw.Centre, Font: boldFont, Color: look.Ink})
			}
			continue
		}
		at := clientSeat(in, c.True, seen[f.Pool], all[f.Pool])
		if c.True && f.Spot != nil {
			at = clientAt(*f.Spot, k, room)
		} else {
			seen[f.Pool]++
		}
		if box := draw.R(at.X-12, at.Y-8, 36, 16); c.True { // beside its place where another fish lies there
			for _, d := range around {
				if b := box.Move(d); taken.free(b) {
					box = b
					break
				}
			}
			taken.block(box)
			to := draw.Pt(box.Min.X+12, box.Min.Y+8)
			if to.Dist(at) > aside {
				s.Stroke(draw.Line(at, to), draw.Stroke{Width: 1}, draw.Fade(look.Ink, 0.6))
			}
			at = to
		}
		g.mark(f, at)
		g.number(f, at, tone)
		if f.N == g.v.Fish {
			pickedRing(s, look, f, at, true)
		}
	}
}

// clientCell is how wide a fish with its number is, in dp.
const clientCell = 38.0

// clientSeat is the place of the i-th of n fish of a pool whose spot is not known or not
// shown: in rows about the middle of a box or, each row about its own middle, of a true pool.
func clientSeat(in draw.Rect, isTrue bool, i, n int) draw.Point {
	cols := max(1, int(in.W()/clientCell))
	if !isTrue {
		rows := math.Min(float64((n+cols-1)/cols), math.Max(1, math.Floor(in.H()/16)))
		line := math.Max(16, math.Min(24, in.H()/rows))
		return draw.Pt(in.Center().X-clientCell*float64(min(cols, n))/2+14+clientCell*float64(i%cols), in.Center().Y-line*(rows-1)/2+line*float64(i/cols))
	}
	cols = max(1, min(cols, n))
	rows := (n + cols - 1) / cols
	return draw.Pt(in.Center().X+clientCell*(float64(i%cols)-float64(cols-1)/2)-6, in.Center().Y+24*(float64(i/cols)-float64(rows-1)/2))
}
