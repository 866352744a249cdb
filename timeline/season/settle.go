package season

import (
	"hash/fnv"

	"gloamline/timeline/tally"
)

// How much is drawn. A season of a few dozen nights takes a second or so.
const (
	testDraws  = 4000
	nightDraws = 500
)

// seed is the same for the same table, so that figures do not waver.
func seed(name string) uint64 {
	h := fnv.New64a()
	h.Write([]byte(name))
	return h.Sum64()
}

// test compares the rows that have enough, once, by the way of its split.
func (s *split) test(draws int) {
	t := &s.table
	t.Test, t.Pairs = nil, nil
	if s.how == plain {
		t.Verdict = Told
		return
	}
	rows, ok := t.enough()
	if !ok {
		t.Verdict = NotEnough
		return
	}
	out := Test{Rows: len(rows)}
	if s.how == within {
		out.Test = tally.Within(pickRows(s.all, rows), draws, seed(t.Name))
	} else {
		out.Test = tally.Between(pickClusters(s.byNight, rows), len(rows), draws, seed(t.Name))
	}
	out.Holm, out.Looked = out.P, 1
	t.Test = &out
	t.Verdict = Open
}

// pickRows keeps the compared rows of the strata.
func pickRows(all []tally.Stratum, rows []int) []tally.Stratum {
	out := make([]tally.Stratum, 0, len(all))
	for _, s := range all {
		n := tally.Stratum{X: make([]float64, len(rows)), T: make([]float64, len(rows))}
		for i, r := range rows {
			n.X[i], n.T[i] = s.X[r], s.T[r]
		}
		out = append(out, n)
	}
	return out
}

func pickClusters(all []tally.Cluster, rows []int) []tally.Cluster {
	place := map[int]int{}
	for i, r := range rows {
		place[r] = i
	}
	var out []tally.Cluster
	for _, c := range all {
		if i, ok := place[c.Group]; ok {
			c.Group = i
			out = append(out, c)
		}
	}
	return out
}

// nightly resamples the nights of each row that has enough.
func (s *split) nightly() {
	for i := range s.table.Rows {
		r := &s.table.Rows[i]
		if !r.Enough || r.Fish == 0 {
			continue
		}
		var x, t []float64
		for _, c := range s.byNight {
			if c.Group == i {
				x, t = append(x, c.X), append(t, c.T)
			}
		}
		v := tally.ResampledRate(x, t, tally.Level, nightDraws, seed(s.table.Name+r.Code))
		r.Nightly = &v
	}
}

// alpha is the limit below which a p speaks.
const alpha = 0.05

// speak turns tests into verdicts, once all that were looked at are known.
func speak(tables []*Table) {
	var p []float64
	var tested []*Table
	for _, t := range tables {
		if t.Test != nil {
			p, tested = append(p, t.Test.P), append(tested, t)
		}
	}
	for i, h := range tally.Holm(p) {
		t := tested[i]
		t.Test.Holm, t.Test.Looked = h, len(p)
		switch {
		case h <= alpha:
			t.Verdict = Differs
		case t.Test.P <= alpha:
			t.Verdict = Idea
		default:
			t.Verdict = NoneSeen
		}
		if t.Kind == Rates && t.Test.P <= alpha {
			t.pairs()
		}
	}
}

// pairs compares every two rows that have enough, corrected for how many those are.
func (t *Table) pairs() {
	rows, _ := t.enough()
	var p []float64
	for i, a := range rows {
		for _, b := range rows[i+1:] {
			ra, rb := t.Rows[a], t.Rows[b]
			r := tally.TwoRates(ra.Fish, ra.Hours, rb.Fish, rb.Hours, tally.Level)
			t.Pairs = append(t.Pairs, Pair{A: ra.Code, B: rb.Code, Ratio: r})
			p = append(p, r.P)
		}
	}
	for i, h := range tally.Holm(p) {
		t.Pairs[i].Holm, t.Pairs[i].Looked = h, len(p)
	}
}
