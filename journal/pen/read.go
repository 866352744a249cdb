package pen

import (
	"slices"
	"strings"
	"time"
	"unicode/utf8"

	"gloamline/journal"
)

// reader reads a text line by line; what a line says is known to those after it.
type reader struct {
	ctx     Context
	lex     lexer
	rod     journal.ID // all lines until another is named
	lineRod journal.ID
	lineRun *journal.Run
	lineAt  journal.When
	nightAt journal.When // the last time read
	rigs    []journal.Rig
	flies   []journal.Fly
	lo, hi  time.Time
	toks    []tok
}

// maxLine is the longest line in bytes; a longer one is cut, since a note has its limit.
const maxLine = 2000

// Read reads a text: a line as it is typed, or a whole page. It never fails; what
// cannot be read is a note.
func Read(text string, ctx Context) Page {
	r := newReader(text, ctx)
	p := Page{Text: text}
	for _, span := range Lines(text) {
		p.Lines = append(p.Lines, r.line(span))
	}
	return p
}

// Lines returns the lines of a text as Read takes them, each with its line end.
func Lines(text string) []Span {
	var out []Span
	for from := 0; from < len(text); {
		to := from + strings.IndexByte(text[from:], '\n') + 1
		if to == from {
			to = len(text)
		}
		if to-from > maxLine {
			to = from + maxLine
			for to > from+1 && !utf8.RuneStart(text[to]) {
				to--
			}
		}
		out = append(out, Span{from, to})
		from = to
	}
	return out
}

func newReader(text string, ctx Context) *reader {
	if ctx.NewID == nil {
		ctx.NewID = journal.NewID
	}
	if ctx.Clock.Zone == nil {
		ctx.Clock.Zone = time.UTC
	}
	if ctx.Today.IsZero() {
		ctx.Today = ctx.Clock.Evening
	}
	ctx.Clock.Things = slices.Clip(ctx.Clock.Things)
	r := &reader{ctx: ctx, rod: ctx.Rod}
	r.lex = lexer{text: text, clock: ctx.Clock, units: ctx.Units}
	r.lex.names, r.lex.pools, r.lex.rodC = names(ctx)
	r.lo, r.hi = ctx.Clock.Evening.Night(ctx.Clock.Zone)
	for _, e := range ctx.Entries {
		if g, ok := e.(journal.Rig); ok {
			r.rigs = append(r.rigs, g)
		}
	}
	return r
}

// line reads one line.
func (r *reader) line(span Span) Line {
	out := Line{Span: span, Evening: r.lex.clock.Evening}
	r.lineRod, r.lineRun, r.lineAt = journal.ID{}, nil, journal.When{}
	r.lex.atoms = cut(r.lex.text, span, r.lex.atoms[:0])
	if len(r.lex.atoms) == 0 {
		out.Tokens = spaced(nil, r.lex.text, span)
		return out
	}
	if h, ok := r.header(span); ok {
		out.Head = &h
		out.Evening = h.Evening
		out.Tokens = spaced([]Token{{Span: r.all(), Kind: Name, Means: []string{"the night of " + h.Evening.String()}}}, r.lex.text, span)
		return out
	}
	if c, ok := r.plainNote(); ok {
		out.Clauses = []Clause{c}
		out.Tokens = spaced([]Token{{Span: r.all(), Kind: Comment, Means: []string{"a note"}}}, r.lex.text, span)
		return out
	}
	r.toks = r.lex.lex(r.toks[:0])
	settleArticles(r.toks, &r.lex)
	if id, ok := r.rodLine(); ok {
		r.rod, out.Rod = id, id
		out.Tokens = r.shown(nil, span)
		return out
	}
	if w, ok := r.timeIn(r.toks); ok {
		r.lineAt = w
	}
	var means [][]string
	for _, g := range r.split(r.toks) {
		c, m := r.clause(g)
		out.Clauses = append(out.Clauses, c)
		means = append(means, m...)
	}
	out.Tokens = r.shown(means, span)
	return out
}

// all is the line without space at its ends.
func (r *reader) all() Span {
	a := r.lex.atoms
	return Span{a[0].span.From, a[len(a)-1].span.To}
}

// rodLine is a line that names a rod and nothing else: what follows is of that rod.
func (r *reader) rodLine() (id journal.ID, ok bool) {
	for _, t := range r.toks {
		switch {
		case t.kind == Space:
		case t.has(rodName) && id.IsZero():
			for _, s := range t.senses {
				if s.slot == rodName {
					id = s.val.(journal.ID)
				}
			}
		default:
			return id, false
		}
	}
	return id, !id.IsZero()
}

// plainNote takes a line that says of itself that it is a note.
func (r *reader) plainNote() (Clause, bool) {
	i, private := 0, false
	if r.lex.fold(0) == "private" {
		i, private = 1, true
	}
	if f := r.lex.fold(i); f != "note" && f != "nb" && f != "n" || r.lex.fold(i+1) != ":" {
		return Clause{}, false
	}
	text := r.lex.textOf(i+2, len(r.lex.atoms))
	if text == "" {
		return Clause{}, false
	}
	n := r.note(r.all(), "")
	n.Private = private
	n.Note = strings.ToValidUTF8(text, "\uFFFD")
	if m, rest, ok := r.noteTime(i + 2); ok {
		n.When, n.Warnings, n.Note = m.when, m.warn, strings.ToValidUTF8(rest, "\uFFFD")
	}
	return Clause{Span: r.all(), Readings: []Reading{{Entries: []journal.Entry{n}}}, Note: n}, true
}

// noteTime takes a time at the beginning of a note, before a colon.
func (r *reader) noteTime(i int) (moment, string, bool) {
	t, ok := r.lex.time(i)
	if !ok || t.why != "" || r.lex.fold(t.to) != ":" || t.to+1 >= len(r.lex.atoms) {
		return moment{}, "", false
	}
	m, ok := t.senses[0].val.(moment)
	if m.stretch {
		m.when = journal.Between(m.when.Lo, m.until.Or(m.when).Hi)
	}
	return m, r.lex.textOf(t.to+1, len(r.lex.atoms)), ok
}

// note is what a clause stays when nothing else will do.
func (r *reader) note(span Span, why string) journal.Note {
	w := r.nightAt
	if !r.lineAt.IsZero() {
		w = r.lineAt
	}
	if w.IsZero() {
		w = journal.Between(r.lo, r.hi)
	}
	h := journal.Head{ID: r.ctx.NewID(), Trip: r.trip(), Rod: r.lineRod, When: w, Note: strings.ToValidUTF8(span.of(r.lex.text), "\uFFFD"), From: journal.Origin{How: "scribble"}}
	return journal.Note{Head: h, Reason: strings.ToValidUTF8(why, "\uFFFD")}
}

// trip is the trip at hand, unless the page tells of another night.
func (r *reader) trip() journal.ID {
	if r.lex.clock.Evening != r.ctx.Clock.Evening {
		return journal.ID{}
	}
	return r.ctx.Trip
}

// shown lays the tokens out with the space between them.
func (r *reader) shown(means [][]string, span Span) []Token {
	out := make([]Token, 0, 2*len(r.toks))
	for i, t := range r.toks {
		k := Token{Span: t.span, Kind: t.kind, Why: t.why}
		if i < len(means) {
			k.Means = means[i]
		} else {
			for _, s := range t.senses {
				if s.label != "" {
					k.Means = append(k.Means, s.label)
				}
			}
		}
		out = append(out, k)
	}
	return spaced(out, r.lex.text, span)
}

// spaced fills what lies between tokens, so that every byte is in one.
func spaced(in []Token, text string, span Span) []Token {
	out := make([]Token, 0, 2*len(in)+1)
	at := span.From
	for _, t := range in {
		if t.From > at {
			out = append(out, Token{Span: Span{at, t.From}})
		}
		out = append(out, t)
		at = t.To
	}
	if at < span.To {
		out = append(out, Token{Span: Span{at, span.To}})
	}
	return out
}

// settleArticles tells the rod A from the article: the rod stands before a pool, a
// time, another rod or the end; written small, only at the beginning.
func settleArticles(toks []tok, x *lexer) {
	for i := range toks {
		t := &toks[i]
		if !t.has(rodName) || len(t.senses) < 2 {
			continue
		}
		text := t.span.of(x.text)
		next := i + 1
		for next < len(toks) && toks[next].kind == Space && toks[next].span.of(x.text) != "," {
			next++
		}
		rod := next >= len(toks) || toks[next].kind == Space || toks[next].has(poolName) || toks[next].has(timeOf) || toks[next].has(untilOf) ||
			x.fold(t.to) == ":" || x.fold(t.to) == "'" || toks[next].span.of(x.text) == "and" || toks[next].span.of(x.text) == "&"
		small := text == x.fold(t.from)
		begins := i == 0 || toks[i-1].kind == Space
		switch {
		case small && !begins:
			rod = false
		case !small && !begins:
			rod = true
		case !small && next < len(toks) && (toks[next].has(positionOf) || toks[next].has(touchOf) && acts(toks[next].span.of(x.text))):
			rod = next+1 >= len(toks) || !toks[next+1].has(fishNoun)
		case !small && next < len(toks) && verbs[fold(toks[next].span.of(x.text))]:
			rod = true
		}
		t.senses = slices.DeleteFunc(slices.Clone(t.senses), func(s sense) bool { return (s.slot == rodName) != rod })
	}
}

// verbs are words that say what somebody did: a capital A before one is a rod.
var verbs = map[string]bool{"had": true, "got": true, "went": true, "has": true, "was": true, "is": true, "changed": true, "changed to": true, "swapped": true, "swapped to": true,
	"switched": true, "switched to": true, "put on": true, "put up": true, "tied on": true, "fished": true, "fished with": true, "started": true, "began": true, "down": true, "went down": true,
	"through": true, "went through": true, "stopped": true, "packed up": true, "finished": true}

// acts tells the verb of a touch from its noun: landed, came off, but a pull.
func acts(word string) bool {
	w := fold(word)
	return strings.HasSuffix(w, "ed") || w == "lost" || strings.HasPrefix(w, "came") || w == "caught" || w == "took" || w == "rose"
}

// names puts the names of the context into a trie of their own.
func names(ctx Context) (*trie, []poolWord, bool) {
	t := &trie{}
	seen := map[string]bool{}
	add := func(name string, s sense) {
		key := nameKey(name)
		if key == "" {
			return
		}
		once := key + "\x00" + string(rune(s.slot)) + s.label
		if !seen[once] {
			seen[once] = true
			t.add(key, s)
		}
	}
	rodC := false
	for _, r := range ctx.Rods {
		s := sense{rodName, r.ID, "rod " + r.Name}
		add(r.Name, s)
		add(r.Initials, s)
		if first, _, ok := strings.Cut(r.Name, " "); ok {
			add(first, s)
		}
		rodC = rodC || fold(r.Initials) == "c"
	}
	var pools []poolWord
	for _, p := range ctx.Beat.Pools {
		s := sense{poolName, p.ID, p.Name}
		w := poolWord{id: p.ID, name: p.Name}
		for _, f := range strings.Fields(nameKey(p.Name)) {
			if f != "the" && f != "pool" {
				w.words = append(w.words, f)
			}
		}
		if len(w.words) == 0 {
			continue
		}
		pools = append(pools, w)
		plain := strings.Join(w.words, " ")
		for _, k := range []string{plain, plain + " pool", "pool " + plain, "the " + plain, "the " + plain + " pool"} {
			add(k, s)
		}
		add(p.Name, s)
	}
	for _, f := range ctx.Flies {
		if len(f.Label) >= 3 {
			add(f.Label, sense{flyWord, f.ID, "the fly “" + f.Label + "”"})
		}
	}
	return t, pools, rodC
}

// nameKey is a name as the atoms of it are folded.
func nameKey(name string) string {
	var out []string
	for _, a := range cut(name, Span{0, len(name)}, nil) {
		out = append(out, a.fold)
	}
	return strings.Join(out, " ")
}
