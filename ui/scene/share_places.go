package scene

import (
	"cmp"
	"math"
	"slices"
	"strings"
	"time"
	"unicode"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/ui/words"
)

// pools tells which pools there are: all that are drawn where places are shown, else
// those fished, in the order fished, so that their number says nothing of the beat.
func (m *sharer) pools() {
	list := m.listPools()
	outlines := map[journal.ID][][2]float64{}
	if m.s.Places {
		if m.frame = newShareFrame(m.n.Beat.Layout()); m.frame != nil {
			for _, p := range m.frame.lay.Pools {
				for _, q := range p.Area[0] {
					outlines[p.Pool.ID] = append(outlines[p.Pool.ID], m.frame.point(q))
				}
			}
		}
	}
	if m.frame != nil {
		m.c.Stream = m.frame.stream()
	}
	for i, p := range list {
		m.pool[p.ID] = i
		name := words.PoolNumbered(i + 1)
		if m.s.Pools == PoolNames {
			name = words.PoolName(p.Name)
		}
		m.c.Pools = append(m.c.Pools, ClientPool{name, outlines[p.ID]})
	}
	m.c.True = m.frame != nil
}

// listPools are the pools told, in their order.
func (m *sharer) listPools() []geo.Pool {
	if !m.s.Places {
		return m.fished()
	}
	var list []geo.Pool
	for _, p := range m.n.Pools {
		list = append(list, p.Pool)
	}
	return list
}

// fished lists the pools of runs and contacts by when they were first fished.
func (m *sharer) fished() []geo.Pool {
	type first struct {
		pool geo.Pool
		at   time.Time
	}
	var all []first
	add := func(p geo.Pool, at time.Time) {
		if !p.ID.IsZero() {
			all = append(all, first{p, at})
		}
	}
	for _, r := range m.n.Rods {
		for _, run := range r.Runs {
			add(run.Pool, run.From.Mid())
		}
	}
	for _, k := range m.n.Contacts {
		if k.HasPool {
			add(k.Pool, k.At.Mid())
		}
	}
	slices.SortStableFunc(all, func(a, b first) int { return cmp.Or(a.at.Compare(b.at), strings.Compare(a.pool.Name, b.pool.Name)) })
	var out []geo.Pool
	for _, f := range all {
		if !slices.ContainsFunc(out, func(p geo.Pool) bool { return p.ID == f.pool.ID }) {
			out = append(out, f.pool)
		}
	}
	return out
}

// shareFrame puts the plane of a beat into a box 1 wide.
type shareFrame struct {
	lay            *geo.Layout
	x0, y0, across float64 // metres
}

func newShareFrame(lay *geo.Layout) *shareFrame {
	x0, y0, x1 := math.Inf(1), math.Inf(1), math.Inf(-1)
	for _, p := range lay.Pools {
		for _, q := range p.Area[0] {
			x0, x1, y0 = math.Min(x0, float64(q.X)), math.Max(x1, float64(q.X)), math.Min(y0, -float64(q.Y))
		}
	}
	if !(x1 > x0) {
		return nil
	}
	return &shareFrame{lay, x0, y0, x1 - x0}
}

func (f *shareFrame) point(q geo.Point) [2]float64 {
	r := func(v float64) float64 { return math.Round(v/f.across*1e4) / 1e4 }
	return [2]float64{r(float64(q.X) - f.x0), r(-float64(q.Y) - f.y0)}
}

// stream is the water between the banks: down the left one and up the right. Nil without
// both.
func (f *shareFrame) stream() [][2]float64 {
	var left, right [][2]float64
	for _, b := range f.lay.Banks {
		for _, q := range b.Path {
			switch b.Bank {
			case geo.TrueLeft:
				left = append(left, f.point(q))
			case geo.TrueRight:
				right = append(right, f.point(q))
			}
		}
	}
	if len(left) < 2 || len(right) < 2 {
		return nil
	}
	slices.Reverse(right)
	return append(left, right...)
}

func (f *shareFrame) place(p geo.Place) [2]float64 { return f.point(f.lay.At(p)) }

// notes takes over what was written for all to read. A note is free text: one that
// names a person, pool, beat or river that is hidden is held back, and so is one with a
// figure where weights or places are hidden, since the figure may be either. A hint in
// other words stays for the sender to see in the preview.
func (m *sharer) notes() {
	if !m.s.Notes {
		return
	}
	for _, e := range m.n.Log.Sorted() {
		h := e.Base()
		if note, ok := e.(journal.Note); ok && note.Private || strings.TrimSpace(h.Note) == "" {
			continue
		}
		if !m.mayGo(h.Note) {
			m.held++
			continue
		}
		m.c.Notes = append(m.c.Notes, ClientNote{m.clock(m.at(m.n.Log.At(e).Mid())), h.Note})
	}
}

func (m *sharer) mayGo(text string) bool {
	if (!m.s.Weights || !m.s.Places) && strings.ContainsFunc(text, unicode.IsNumber) {
		return false
	}
	low := strings.ToLower(text)
	said := strings.FieldsFunc(low, func(r rune) bool { return !unicode.IsLetter(r) }) // for names of two letters
	for _, secret := range m.secrets() {
		for _, word := range strings.Fields(strings.ToLower(secret)) {
			if strings.Contains(low, word) && len([]rune(word)) > 2 || slices.Contains(said, word) {
				return false
			}
		}
	}
	return true
}

// secrets lists the names that are hidden.
func (m *sharer) secrets() []string {
	var out []string
	for _, r := range m.n.Rods {
		if !m.mayName(r.Rod.Person) {
			out = append(out, r.Name)
		}
	}
	if !m.s.People {
		out = append(out, m.n.Guide)
	}
	if m.s.Pools != PoolNames {
		for _, p := range m.n.Pools {
			out = append(out, p.Pool.Name)
		}
	}
	if !m.s.Water {
		out = append(out, m.n.Beat.Name, m.n.Beat.River.Name)
	}
	if !m.s.Places {
		for _, f := range m.n.Beat.Features {
			out = append(out, f.Name)
		}
	}
	return out
}
