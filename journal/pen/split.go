package pen

// limits of a line: beyond them it is read part by part.
const (
	maxParts  = 12 // parts that are weighed against each other
	maxJoined = 6  // parts that may make one clause
	unreadFee = 1.2
	noteFee   = 10.0
)

// group is a run of tokens that say one thing, with what it may say.
type group struct {
	from, to int // tokens
	cands    []cand
	why      string
	cost     float64
}

// split cuts a line into clauses: at commas, stops, dashes, “and” and “then” where
// both sides read by themselves, so that “landed 1lb10, hen, dropper” stays one.
func (r *reader) split(toks []tok) []group {
	var out []group
	parts := r.parts(toks, r.separator)
	for len(parts) > 0 {
		n := min(len(parts), maxParts)
		for _, g := range r.best(toks, parts[:n]) {
			if g.cands == nil {
				if finer := r.finer(toks, g); finer != nil {
					out = append(out, finer...)
					continue
				}
			}
			out = append(out, g)
		}
		parts = parts[n:]
	}
	return out
}

// finer cuts an unreadable group before the words that can begin something new, and
// keeps the cut only if every piece reads.
func (r *reader) finer(toks []tok, g group) []group {
	part := toks[g.from:g.to]
	parts := r.parts(part, func(i int) bool { return i > 0 && begins(part[i]) })
	if len(parts) < 2 || len(parts) > 8 {
		return nil
	}
	out := r.best(part, parts)
	for i := range out {
		if out[i].cands == nil || !stands(part, out, i) {
			return nil
		}
	}
	for i := range out {
		out[i].from += g.from
		out[i].to += g.from
	}
	return out
}

// stands reports whether a piece cut out of a note has a time of its own, or says
// something else about sky, weather or water than its neighbour.
func stands(part []tok, all []group, i int) bool {
	for _, t := range part[all[i].from:all[i].to] {
		if t.has(timeOf) {
			return true
		}
	}
	k := all[i].cands[0].kind
	if k&(inSky|inWeather|inWater) == 0 {
		return false
	}
	for j, g := range all {
		if j != i && g.cands != nil && g.cands[0].kind == k {
			return false
		}
	}
	return true
}

func begins(t tok) bool {
	for _, s := range t.senses {
		switch s.slot {
		case touchOf, treesGrey, moonOf, moonNoun, windNoun, riverNoun, levelNoun, airNoun, cloudNoun, cloudOf, positionOf, lineOf, mistOf, rainOf, timeOf, weightOf, tempOf:
			return true
		}
	}
	return false
}

// parts cuts tokens before those at which cut says so.
func (r *reader) parts(toks []tok, cut func(int) bool) [][2]int {
	var out [][2]int
	from := 0
	for i := range toks {
		if i > from && cut(i) {
			out = append(out, [2]int{from, i})
			from = i
		}
	}
	if from < len(toks) {
		out = append(out, [2]int{from, len(toks)})
	}
	return out
}

// separator reports whether token i may stand between two clauses.
func (r *reader) separator(i int) bool {
	t := r.toks[i]
	if t.to-t.from != 1 {
		return false
	}
	switch f := r.lex.fold(t.from); f {
	case "and", "&":
		return !r.pair(i)
	case ",", ";", "then", "but", "–", "—", "/":
		return true
	case ".", "-":
		return t.to >= len(r.lex.atoms) || r.lex.atoms[t.to].gap
	}
	return false
}

// pair reports whether token i joins two rods or two pools.
func (r *reader) pair(i int) bool {
	if i == 0 || i+1 >= len(r.toks) {
		return false
	}
	a, b := r.toks[i-1], r.toks[i+1]
	return a.has(rodName) && b.has(rodName) || a.has(poolName) && b.has(poolName)
}

// best finds the cheapest way to make clauses of parts.
func (r *reader) best(toks []tok, parts [][2]int) []group {
	n := len(parts)
	cost := make([]float64, n+1)
	last := make([]group, n+1)
	start := make([]int, n+1)
	for to := 1; to <= n; to++ {
		cost[to] = 1e18
		for from := to - 1; from >= 0 && to-from <= maxJoined; from-- {
			g := group{from: parts[from][0], to: parts[to-1][1]}
			g.cands, g.why = r.read(toks[g.from:g.to])
			g.cost = noteFee * float64(to-from)
			if g.cands != nil {
				g.cost = g.cands[0].cost
			} else if to-from > 1 {
				g.cost -= 1 // what stays a note stays together
			}
			if c := cost[from] + g.cost; c < cost[to] {
				cost[to], last[to], start[to] = c, g, from
			}
		}
	}
	var out []group
	for to := n; to > 0; to = start[to] {
		out = append(out, last[to])
	}
	for i, j := 0, len(out)-1; i < j; i, j = i+1, j-1 {
		out[i], out[j] = out[j], out[i]
	}
	return out
}
